package sparewell.workbook.read;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.season.BoatBounds;
import sparewell.season.Box;
import sparewell.season.Compartment;
import sparewell.season.Dimensions;
import sparewell.season.Place;
import sparewell.units.Length;
import sparewell.units.Mass;
import sparewell.workbook.InputSheets;
import sparewell.workbook.value.Amounts;

/** Reads compartments and boxes, and finds the place that a name in a Box column means. */
final class PlacesReader {
  private final Book book;
  final List<Compartment> compartments;
  private final Map<String, Box> boxes = new LinkedHashMap<>();
  final BoxLog log;
  private final Keys compartmentKeys = new Keys("the sheet Compartments");
  final Keys boxKeys = new Keys("the sheet Boxes");
  private final Keys placeKeys = new Keys("the sheets Boxes and Compartments");

  PlacesReader(Book book) {
    this.book = book;
    compartments = book.list(InputSheets.COMPARTMENTS, this::compartment);
    book.each(InputSheets.BOXES, this::box);
    compartments.forEach(c -> placeKeys.add(c.name(), c.origin()));
    log = BoxLog.read(book, boxKeys, compartmentKeys);
    log.applyTo(boxes);
  }

  /** Boxes where they stand at the date of analysis. */
  List<Box> boxes() {
    return List.copyOf(boxes.values());
  }

  private Optional<Compartment> compartment(Row row) {
    Optional<String> name = book.name(row, "Compartment");
    boolean ashore = row.yes("Ashore");
    Optional<Length> fromTransom =
        ashore && row.isBlank("From transom") // a shelf at home has no place in the boat
            ? Optional.of(Length.ZERO)
            : row.position("From transom");
    Length fromCentreline = row.position("From centreline").orElse(Length.ZERO);
    Optional<Dimensions> size = dimensions(row);
    Optional<Mass> maxLoad = row.mass("Max load");
    boolean atHand = row.yes("At hand");
    if (!defined(row, "Compartment", name, compartmentKeys)) {
      name.ifPresent(n -> placeKeys.leaveOut(n, row.origin()));
      return Optional.empty();
    }
    return Optional.of(
        new Compartment(
            name.orElseThrow(),
            fromTransom.orElseThrow(),
            fromCentreline,
            size,
            maxLoad,
            atHand,
            ashore,
            row.at(BoatBounds.aside(fromCentreline) ? "From centreline" : "From transom"),
            row.origin()));
  }

  private void box(Row row) {
    Optional<String> name = book.name(row, "Box");
    Optional<String> compartment = row.key("Compartment", compartmentKeys);
    Optional<Dimensions> size = dimensions(row);
    Optional<Mass> emptyWeight = row.mass("Empty weight");
    String tape = row.text("Tape colour").orElse("");
    boolean staysPut = row.yes("Stays put");
    boolean atHand = row.yes("At hand");
    var lastChecked = row.date("Last checked");
    Optional<Integer> every = row.some("Check every (days)", Amounts::pieces);
    if (defined(row, "Box", name, boxKeys)) {
      placeKeys.add(name.orElseThrow(), row.origin());
      boxes.put(
          name.get(),
          new Box(
              name.orElseThrow(),
              compartment.orElseThrow(),
              size,
              emptyWeight,
              tape,
              staysPut,
              atHand,
              lastChecked,
              every.map(OptionalInt::of).orElse(OptionalInt.empty()),
              row.origin()));
    } else {
      name.ifPresent(n -> placeKeys.leaveOut(n, row.origin()));
    }
  }

  private static Optional<Dimensions> dimensions(Row row) {
    Optional<Length> length = row.length("Length");
    Optional<Length> width = row.length("Width");
    Optional<Length> height = row.length("Height");
    return length.flatMap(l -> width.flatMap(w -> height.map(h -> new Dimensions(l, w, h))));
  }

  /**
   * Returns whether a row defines a new name: it has no fault and the name was not met before. The
   * first good row of a name counts; a later one is remarked.
   */
  static boolean defined(Row row, String column, Optional<String> name, Keys keys) {
    if (name.isEmpty()) {
      return false;
    }
    Optional<Cell> before = keys.origin(name.get());
    if (before.isPresent()) {
      row.leaveOut(column, Code.DUPLICATE, name.get(), before.get().atColumn(0));
      return false;
    }
    if (row.failed()) {
      keys.leaveOut(name.get(), row.origin());
      return false;
    }
    keys.add(name.get(), row.origin());
    return true;
  }

  /** The place that a column names: a box, else a compartment. */
  Optional<Place> place(Row row, String column) {
    return row.key(column, placeKeys).map(this::placeOf);
  }

  private Place placeOf(String name) {
    return Optional.ofNullable(boxes.get(name))
        .map(box -> new Place(box.name(), box.compartment()))
        .orElseGet(() -> new Place("", name));
  }
}
