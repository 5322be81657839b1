package sparewell.workbook.read;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.season.StyleHours;
import sparewell.season.Trip;
import sparewell.workbook.InputSheets;
import sparewell.workbook.value.Amounts;
import sparewell.workbook.value.Dates;
import sparewell.workbook.value.Words;

/** Reads trips and style hours, and finds the trip that a name or date means. */
final class TripsReader {
  private static final String OUT_OF_FIT =
      "trip left out of the loss rates; its losses still come off the stock";

  private final Book book;
  private final Keys keys = new Keys("the sheet Trips");
  final List<Trip> trips;
  private final Map<String, LocalDate> later = new HashMap<>();

  /** Six minutes; nobody logs a shorter trip, and 0 stands for one without hours. */
  private static final double LEAST_HOURS = 0.1;

  private final Map<String, LocalDate> dates = new HashMap<>();
  private final Map<LocalDate, List<String>> byDate = new HashMap<>();
  final Lookalikes covers = new Lookalikes("kept as a cover of its own");

  TripsReader(Book book) {
    this.book = book;
    this.trips = book.list(InputSheets.TRIPS, this::trip);
  }

  private Optional<Trip> trip(Row row) {
    Optional<LocalDate> date = row.date("Date");
    Optional<String> named = row.textOrDate("Trip").map(text -> book.shown("Trip", text));
    Optional<String> id = named.or(() -> date.map(LocalDate::toString));
    OptionalDouble hours = hours(row, id.orElse(""));
    double days = row.read("Days", Amounts::days).orElse(1.0);
    Optional<String> cover = book.name(row, "Cover");
    Optional<LocalDate> taken = id.flatMap(keys::find).map(dates::get);
    if (named.isPresent() && taken.isPresent() && date.isPresent() && !taken.equals(date)) {
      String before = "row " + keys.origin(named.get()).orElseThrow().row();
      row.leaveOut("Trip", Code.TRIP_NAME_TAKEN, named.get(), before, taken.get(), date.get());
      return Optional.empty();
    }
    if (!PlacesReader.defined(row, named.isPresent() ? "Trip" : "Date", id, keys)) {
      return Optional.empty();
    }
    LocalDate day = date.orElseThrow();
    dates.put(id.orElseThrow(), day);
    List<String> sameDay = byDate.computeIfAbsent(day, d -> new ArrayList<>());
    if (named.isEmpty() && !sameDay.isEmpty()) {
      row.say("Date", Code.SAME_DATE_TRIPS, day);
    }
    sameDay.add(id.orElseThrow());
    LocalDate asOf = book.settings().asOf();
    if (day.isAfter(asOf)) {
      later.put(id.get(), day);
      row.say("Date", Code.AFTER_AS_OF, day, asOf);
      return Optional.empty();
    }
    cover.ifPresent(name -> covers.meet(row, "Cover", name));
    return Optional.of(new Trip(id.get(), day, hours, days, cover, row.origin()));
  }

  private static OptionalDouble hours(Row row, String trip) {
    Optional<Double> hours = row.readSparing("Hours", OUT_OF_FIT, Amounts::hours);
    if (hours.isPresent() && hours.get() < LEAST_HOURS) {
      row.say("Hours", Code.TRIP_WITHOUT_HOURS, trip, "Trip");
      return OptionalDouble.empty();
    }
    return hours.map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }

  /** The id of the trip that a row names by id or date; absent and remarked where it cannot be. */
  Optional<String> tripId(Row row) {
    return row.read(
        "Trip",
        (cell, remarks) -> {
          String text = Words.text(cell);
          Optional<String> known = keys.find(text);
          if (known.isPresent()) {
            return known;
          }
          Optional<LocalDate> date = Dates.iso(text);
          known = date.map(LocalDate::toString).flatMap(keys::find);
          List<String> dated = date.map(d -> byDate.getOrDefault(d, List.of())).orElse(List.of());
          if (known.isPresent() || dated.size() == 1) {
            return known.or(() -> Optional.of(dated.get(0)));
          }
          if (dated.size() > 1) {
            remarks.unusable(Code.AMBIGUOUS_DATE, "");
          } else {
            Row.unknown(text, keys, remarks);
          }
          return Optional.empty();
        });
  }

  /** Returns whether a row's trip is after the date of analysis; it is remarked then. */
  boolean isLater(Row row, String trip) {
    LocalDate day = later.get(trip);
    if (day != null) {
      row.say("Trip", Code.AFTER_AS_OF, day, book.settings().asOf());
    }
    return day != null;
  }

  /** Returns whether a trip is up to the date of analysis. */
  boolean counts(String trip) {
    return !later.containsKey(trip);
  }

  List<StyleHours> styleHours(StylesReader styles) {
    return book.list(InputSheets.STYLE_HOURS, row -> styleHours(row, styles.keys));
  }

  /** A row left out still tells that the style it means was thrown on that trip. */
  private Optional<StyleHours> styleHours(Row row, Keys styles) {
    Optional<String> trip = tripId(row);
    Optional<String> style = row.key("Style", styles);
    Optional<Double> hours = row.read("Hours", Amounts::hours);
    if (row.failed()) {
      Cell fault = row.at(style.isPresent() ? "Hours" : "Style");
      Optional<String> meant = style.or(() -> row.near("Style", styles));
      return trip.filter(this::counts)
          .flatMap(id -> meant.map(s -> new StyleHours(id, s, OptionalDouble.empty(), fault)));
    }
    return isLater(row, trip.orElseThrow())
        ? Optional.empty()
        : Optional.of(
            new StyleHours(trip.get(), style.orElseThrow(), hours.orElseThrow(), row.origin()));
  }
}
