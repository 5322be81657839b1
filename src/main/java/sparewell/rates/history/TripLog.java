package sparewell.rates.history;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Loss;
import sparewell.season.Season;
import sparewell.season.Style;
import sparewell.season.StyleHours;
import sparewell.season.Trip;

/** Log of each trip: hours and losses of each style. */
public final class TripLog {
  private final Map<String, Integer> styleNumber = new LinkedHashMap<>();
  private final Map<String, Map<String, Double>> hours = new LinkedHashMap<>(); // by trip, style
  private final Map<String, Map<String, Cell>> unread = new LinkedHashMap<>(); // by trip, style
  private final Map<String, Map<String, List<Loss>>> losses = new LinkedHashMap<>();

  /** Reads a season. */
  public TripLog(Season season) {
    for (Style style : season.styles()) {
      styleNumber.putIfAbsent(style.name(), styleNumber.size());
    }
    for (StyleHours row : season.styleHours()) {
      hours
          .computeIfAbsent(row.trip(), id -> new LinkedHashMap<>())
          .merge(row.style(), row.knownHours(), Double::sum);
      if (row.thrownHours().isEmpty()) {
        unread
            .computeIfAbsent(row.trip(), id -> new LinkedHashMap<>())
            .putIfAbsent(row.style(), row.origin());
      }
    }
    for (Loss loss : season.losses()) {
      losses
          .computeIfAbsent(loss.trip(), id -> new LinkedHashMap<>())
          .computeIfAbsent(loss.item().style(), style -> new ArrayList<>())
          .add(loss);
    }
  }

  /** True if the hours of a trip are logged style by style. */
  boolean hasStyleHours(Trip trip) {
    return hours.containsKey(trip.id());
  }

  /** Styles thrown on a trip for hours that could not be read, with the cells. */
  Map<String, Cell> unread(Trip trip) {
    return unread.getOrDefault(trip.id(), Map.of());
  }

  /** Styles that were lost, or ran out, on a trip. */
  Set<String> lost(Trip trip) {
    Set<String> styles = new LinkedHashSet<>();
    losses
        .getOrDefault(trip.id(), Map.of())
        .forEach(
            (style, rows) -> {
              if (rows.stream().anyMatch(loss -> loss.lostPieces() > 0 || loss.ranOut())) {
                styles.add(style);
              }
            });
    return styles;
  }

  /** Hours that each style was thrown; empty where none are logged. */
  Map<String, Double> styleHours(Trip trip) {
    return hours.getOrDefault(trip.id(), Map.of());
  }

  /**
   * The styles used on a trip, in their order. Where the trip has no style hours, each has its
   * usual share of the trip's, and so has a style whose hours could not be read; a loss of a style
   * without hours counts, with hours assumed.
   *
   * @param number number that the trip is to have
   * @param trip with hours
   * @param usual shares as known at the time of asking
   * @param findings receives what had to be assumed
   */
  public List<StyleUse> uses(int number, Trip trip, UsualShares usual, Findings findings) {
    double tripHours = trip.fishedHours().getAsDouble();
    Map<String, List<Loss>> lostHere = losses.getOrDefault(trip.id(), Map.of());
    List<StyleUse> uses = new ArrayList<>();
    for (String name : concerned(trip, lostHere.keySet())) {
      List<Loss> lost = lostHere.getOrDefault(name, List.of());
      int pieces = lost.stream().mapToInt(Loss::lostPieces).sum();
      boolean ranOut = lost.stream().anyMatch(Loss::ranOut);
      double byShare = tripHours * usual.of(name);
      double used = hasStyleHours(trip) ? styleHours(trip).getOrDefault(name, 0.0) : byShare;
      boolean guessed = byShare == 0 || usual.guessed().contains(name);
      Optional<Cell> fault = Optional.ofNullable(unread(trip).get(name));
      boolean leftOut = (pieces > 0 || ranOut) && (!(used > 0) || guessed && !hasStyleHours(trip));
      if (leftOut || fault.isPresent()) {
        used = byShare > 0 ? byShare : tripHours * usual.ofAny();
      }
      if (fault.isPresent()) {
        Object where = lost.isEmpty() ? "none" : lost.get(0).origin().under("Lost");
        findings.add(Code.HOURS_UNREAD, fault.get(), name, trip.id(), shown(used), where);
      } else if (leftOut) {
        findings.add(
            guessed ? Code.LOSS_WITHOUT_SHARE : Code.LOSS_WITHOUT_STYLE_HOURS,
            lost.get(0).origin().under("Style"),
            name,
            trip.id(),
            shown(used));
      }
      if (used > 0) {
        uses.add(
            new StyleUse(
                number, styleNumber.get(name), used, pieces, ranOut, leftOut || fault.isPresent()));
      }
    }
    return uses;
  }

  private static String shown(double hours) {
    return String.format(Locale.ROOT, "%.1f", hours);
  }

  /** Styles that a trip may have to do with, in their order. */
  private Collection<String> concerned(Trip trip, Set<String> lost) {
    if (!hasStyleHours(trip)) {
      return styleNumber.keySet();
    }
    TreeMap<Integer, String> concerned = new TreeMap<>();
    for (Set<String> names : List.of(styleHours(trip).keySet(), lost)) {
      for (String name : names) {
        if (styleNumber.containsKey(name)) {
          concerned.put(styleNumber.get(name), name);
        }
      }
    }
    return concerned.values();
  }
}
