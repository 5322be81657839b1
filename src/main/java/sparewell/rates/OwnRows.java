package sparewell.rates;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import sparewell.experience.Entry;
import sparewell.experience.Key;
import sparewell.experience.Kind;
import sparewell.experience.Unit;
import sparewell.rates.fit.Observation;
import sparewell.rates.fit.OwnEvidence;
import sparewell.rates.fit.RateFit;

/** Evidence of one log, as rows for others: no people, waters, boxes, money or dates. */
public final class OwnRows {
  private final RateFit fit;
  private final Log log;
  private final UnaryOperator<String> fold;
  private final List<Entry> rows = new ArrayList<>();

  /**
   * A log and its names.
   *
   * @param id random id of the log
   * @param fingerprint of the workbook's contents
   * @param year of its last trip
   * @param unit of its rates
   * @param hours hours afloat on all trips
   * @param styles names of its styles
   * @param families names of its families
   * @param covers names of its covers
   */
  public record Log(
      String id,
      String fingerprint,
      int year,
      Unit unit,
      double hours,
      List<String> styles,
      List<String> families,
      List<String> covers) {
    public Log {
      styles = List.copyOf(styles);
      families = List.copyOf(families);
      covers = List.copyOf(covers);
    }
  }

  /** Trips, hours and pieces behind the rows. */
  private static final class Behind {
    private final Set<Integer> trips = new HashSet<>();
    private double hours;
    private int pieces;

    void add(Observation one) {
      trips.add(one.trip());
      hours += one.hours();
      pieces += one.lostPieces();
    }
  }

  private OwnRows(RateFit fit, Log log, UnaryOperator<String> fold) {
    this.fit = fit;
    this.log = log;
    this.fold = fold;
  }

  /**
   * The rows of a log.
   *
   * @param fit of the log alone, under the weak prior
   * @param fold the form of a name in which names are compared
   */
  public static List<Entry> of(RateFit fit, Log log, UnaryOperator<String> fold) {
    if (fit.input().observations().isEmpty()) {
      return List.of();
    }
    OwnRows rows = new OwnRows(fit, log, fold);
    rows.fill();
    return List.copyOf(rows.rows);
  }

  private void fill() {
    OwnEvidence evidence = new OwnEvidence(fit);
    for (int s = 0; s < log.styles().size(); s++) {
      int style = s;
      int family = fit.input().familyOfStyle().get(s);
      Behind behind = behind(one -> one.style() == style);
      evidence
          .rate(s)
          .ifPresent(
              gamma ->
                  add(
                      new Key(Kind.STYLE, log.unit(), ""),
                      log.styles().get(style),
                      log.families().get(family),
                      Math.log((gamma.pieces() + 0.5) / gamma.hours()),
                      1 / (gamma.pieces() + 0.5),
                      behind));
    }
    for (int f = 0; f < log.families().size(); f++) {
      int family = f;
      Behind behind = behind(one -> fit.input().familyOfStyle().get(one.style()) == family);
      add(Kind.FAMILY, log.unit(), log.families().get(f), evidence.family(f), behind);
    }
    for (int c = 0; c < fit.input().covers(); c++) {
      int cover = c;
      Behind behind = behind(one -> one.cover() == cover);
      add(Kind.COVER, Unit.TIMES, log.covers().get(c), evidence.cover(c), behind);
    }
    Behind all = behind(one -> true);
    Behind afloat = behind(one -> true);
    afloat.hours = log.hours();
    // Always there: its hours are those of the whole log.
    OwnEvidence.Normal common =
        evidence.commonRate().orElse(new OwnEvidence.Normal(Math.log(0.06), Entry.MOST_VARIANCE));
    String name = Kind.Spread.COMMON_RATE.key();
    add(Kind.SPREAD, log.unit(), name, Optional.of(common), afloat);
    spread(Kind.Spread.FAMILY_SPREAD, evidence.familySpread(), all);
    spread(Kind.Spread.STYLE_SPREAD, evidence.styleSpread(), all);
    spread(Kind.Spread.DAY_SIZE, evidence.daySize(), all);
  }

  private void spread(Kind.Spread of, Optional<OwnEvidence.Normal> normal, Behind behind) {
    add(Kind.SPREAD, Unit.TIMES, of.key(), normal, behind);
  }

  private Behind behind(Predicate<Observation> which) {
    Behind behind = new Behind();
    fit.input().observations().stream().filter(which).forEach(behind::add);
    return behind;
  }

  private void add(
      Kind kind, Unit unit, String name, Optional<OwnEvidence.Normal> normal, Behind behind) {
    if (normal.isPresent() && !behind.trips.isEmpty()) {
      OwnEvidence.Normal known = normal.get();
      add(new Key(kind, unit, ""), name, "", known.mean(), known.variance(), behind);
    }
  }

  private void add(
      Key kind, String name, String family, double mean, double variance, Behind behind) {
    rows.add(
        new Entry(
            log.id(),
            log.fingerprint(),
            log.year(),
            new Key(kind.kind(), kind.unit(), fold.apply(name)),
            name,
            family,
            fold.apply(family),
            Math.max(Entry.LEAST_ESTIMATE, Math.min(Entry.MOST_ESTIMATE, mean)),
            Math.min(Entry.MOST_VARIANCE, variance),
            behind.trips.size(),
            behind.hours,
            behind.pieces));
  }
}
