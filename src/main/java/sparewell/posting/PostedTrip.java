package sparewell.posting;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import sparewell.finding.Cell;
import sparewell.posting.Posting.PostedRow;
import sparewell.season.Cause;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.Loss;
import sparewell.season.Season;
import sparewell.season.Trip;
import sparewell.sheet.EntryTable;
import sparewell.sheet.Ticks;
import sparewell.sheet.TripCardSheet;
import sparewell.sheet.Typed;
import sparewell.workbook.InputSheets;

/** The rows of the trip that the trip card tells of. */
final class PostedTrip {
  private final Typed typed;
  private final LocalDate date;
  final List<PostedRow> rows = new ArrayList<>();
  final List<String> faults = new ArrayList<>();
  private final List<Loss> losses = new ArrayList<>();

  /** The records, in the end with the trip and its losses. */
  Season season;

  PostedTrip(Typed typed, Season season, LocalDate date) {
    this.typed = typed;
    this.season = season;
    this.date = date;
    if (TripCardSheet.filled(typed)) {
      post();
    }
  }

  private void post() {
    Optional<Event> event = TripCardSheet.event(typed, season);
    LocalDate day = day(event);
    LocalDate asOf = season.settings().asOf();
    if (day.isAfter(asOf)) {
      fault(
          TripCardSheet.DATE,
          "the trip of %s is after the date of the analysis, %s; correct that date, or set or clear"
              + " As of in Settings; a trip still ahead is posted once it is over",
          day,
          asOf);
    }
    field(TripCardSheet.TRIP).ifPresent(name -> faultIfThere(name, day));
    String name = name(field(TripCardSheet.TRIP), day);
    Map<String, String> trip = new LinkedHashMap<>();
    trip.put("Trip", name);
    trip.put("Date", day.toString());
    trip.put("Water", event.map(Event::water).orElse(""));
    trip.put("Hours", positive(TripCardSheet.HOURS));
    trip.put("Days", positive(TripCardSheet.DAYS));
    trip.put("Cover", field(TripCardSheet.COVER).orElse(""));
    trip.put("Note", field(TripCardSheet.NOTE).orElse(""));
    rows.add(new PostedRow(InputSheets.TRIPS, trip, Cell.ofSheet(TripCardSheet.NAME)));
    of(EntryTable.CARD_STYLES).forEach(row -> hours(name, row));
    of(EntryTable.CARD_ITEMS).forEach(row -> loss(name, row));
    Trip fished =
        new Trip(name, day, OptionalDouble.empty(), 1, Optional.empty(), rows.get(0).from());
    season = LedgerProof.withTrip(season, fished, losses);
  }

  private List<Typed.Row> of(EntryTable table) {
    return typed.rows().stream().filter(row -> row.table() == table).toList();
  }

  /** Value on the card, else the event's day, else that of the posting. */
  private LocalDate day(Optional<Event> event) {
    Object there = typed.card().get(TripCardSheet.DATE);
    if (there instanceof LocalDate day) {
      return day;
    }
    if (there != null) {
      try {
        return LocalDate.parse(there.toString().strip());
      } catch (DateTimeParseException other) {
        fault(TripCardSheet.DATE, "'%s' is not a date; write it like %s", there, date);
      }
    }
    return event.map(Event::date).orElse(date);
  }

  /** A trip of that name and day was typed into Trips already: posted too, it would count twice. */
  private void faultIfThere(String name, LocalDate day) {
    boolean there =
        season.trips().stream()
            .anyMatch(
                trip -> trip.date().equals(day) && Ticks.fold(trip.id()).equals(Ticks.fold(name)));
    if (there) {
      fault(
          TripCardSheet.TRIP,
          "'%s' of %s stands in Trips already; clear the card, or give it another name if it was"
              + " another trip",
          name,
          day);
    }
  }

  /** A name that no trip has yet. */
  private String name(Optional<String> wanted, LocalDate day) {
    Set<String> taken =
        season.trips().stream().map(trip -> Ticks.fold(trip.id())).collect(Collectors.toSet());
    String first = wanted.orElse("Trip of " + day);
    if (taken.contains(Ticks.fold(first)) && wanted.isPresent()) {
      first = first + " " + day;
    }
    String name = first;
    for (int n = 2; taken.contains(Ticks.fold(name)); n++) {
      name = first + " (" + n + ")";
    }
    return name;
  }

  private Optional<String> field(String label) {
    return Optional.ofNullable(typed.card().get(label)).map(Ticks::plain);
  }

  /** A number above 0 in a field, as text; the hours must be given. */
  private String positive(String label) {
    Object there = typed.card().get(label);
    if (there == null) {
      if (label.equals(TripCardSheet.HOURS)) {
        fault(label, "type the hours fished; without them the trip tells nothing of rates");
      }
      return "";
    }
    Optional<Double> number = number(there).filter(hours -> hours > 0);
    if (number.isEmpty()) {
      fault(label, "'%s' is not a number above 0", Ticks.plain(there));
    }
    return number.map(Ticks::plain).orElse("");
  }

  private static Optional<Double> number(Object there) {
    if (there instanceof Double number) {
      return Optional.of(number).filter(hours -> hours >= 0);
    }
    String text = there.toString().strip().replace(',', '.');
    return text.matches("\\d{1,6}(\\.\\d{1,6})?")
        ? Optional.of(Double.parseDouble(text))
        : Optional.empty();
  }

  private void hours(String trip, Typed.Row row) {
    Object entry = row.entries().values().iterator().next();
    Optional<Double> hours = number(entry);
    if (hours.isEmpty()) {
      fault(row, "'%s' is not a number of hours", Ticks.plain(entry));
    } else if (hours.get() > 0) {
      Map<String, String> values =
          Map.of("Trip", trip, "Style", row.key().get(0), "Hours", Ticks.plain(hours.get()));
      rows.add(new PostedRow(InputSheets.STYLE_HOURS, values, row.at()));
    }
  }

  private void loss(String trip, Typed.Row row) {
    Object lost = row.entries().getOrDefault(TripCardSheet.LOST, "0");
    Object ranOut = row.entries().getOrDefault(TripCardSheet.RAN_OUT, "no");
    OptionalInt pieces = Ticks.pieces(lost);
    if (pieces.isEmpty()) {
      fault(row, "'%s' is no whole number of pieces lost", Ticks.plain(lost));
    } else if (!Ticks.isYes(ranOut) && !Ticks.isNo(ranOut)) {
      fault(row, "'%s' is neither yes nor no", Ticks.plain(ranOut));
    } else if (pieces.getAsInt() > 0 || Ticks.isYes(ranOut)) {
      ItemId item = new ItemId(row.key().get(0), row.key().get(1), row.key().get(2));
      losses.add(
          new Loss(trip, item, pieces.getAsInt(), Cause.OTHER, Ticks.isYes(ranOut), row.at()));
      Map<String, String> values = Poster.item(item);
      values.put("Trip", trip);
      values.put("Lost", String.valueOf(pieces.getAsInt()));
      values.put("Ran out", Ticks.isYes(ranOut) ? "yes" : "");
      rows.add(new PostedRow(InputSheets.LOSSES, values, row.at()));
    }
  }

  private void fault(Typed.Row row, String what, Object... details) {
    faults.add(Poster.fault(row, what.formatted(details)));
  }

  private void fault(String label, String what, Object... details) {
    faults.add(TripCardSheet.NAME + ", " + label + ": " + what.formatted(details) + ".");
  }
}
