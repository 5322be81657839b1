package sparewell.workbook.read;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.season.Boat;
import sparewell.season.FixedLoad;
import sparewell.units.Length;
import sparewell.units.Mass;
import sparewell.workbook.InputSheets;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.value.Amounts;
import sparewell.workbook.value.Remarks;
import sparewell.workbook.value.Words;

/** Reads loads other than tackle, and figures of the capacity plate and tests. */
final class BoatReader {
  private static final double MOST_DEGREES = 45;

  private final Book book;
  private final SettingRows rows = new SettingRows(InputSheets.BOAT, InputSheets.BOAT_ROWS);

  BoatReader(Book book) {
    this.book = book;
  }

  List<FixedLoad> loads() {
    return book.list(InputSheets.LOADS, BoatReader::load);
  }

  private static Optional<FixedLoad> load(Row row) {
    Optional<String> name = row.text("Load");
    Optional<Mass> weight = row.mass("Weight");
    Optional<Length> fromTransom = row.position("From transom");
    Length fromCentreline = row.position("From centreline").orElse(Length.ZERO);
    FixedLoad.Kind kind =
        row.choice("Kind")
            .map(word -> FixedLoad.Kind.valueOf(word.toUpperCase(Locale.ROOT)))
            .orElse(FixedLoad.Kind.GEAR);
    return row.failed()
        ? Optional.empty()
        : Optional.of(
            new FixedLoad(
                name.orElseThrow(),
                weight.orElseThrow(),
                fromTransom.orElseThrow(),
                fromCentreline,
                kind,
                row.origin()));
  }

  Boat boat() {
    book.each(InputSheets.BOAT, rows::add);
    boolean motor = rows.read("Plate includes motor", Words::yesNo).orElse(true);
    return new Boat(
        mass("Plate weight"), mass("Plate persons weight"), motor, trimTest(), heelTest());
  }

  private Optional<Mass> mass(String name) {
    return rows.get(name).flatMap(n -> n.row().someMass(n.value()));
  }

  private Optional<Length> length(String name) {
    return rows.get(name).flatMap(n -> n.row().length(n.value()));
  }

  private Optional<Boat.TrimTest> trimTest() {
    Optional<Mass> weight = mass("Trim test weight");
    Optional<Length> distance = length("Trim test distance");
    Optional<Length> change = length("Trim test bow change");
    remarkIncomplete("trim", weight, distance, change, "bow change");
    return weight.flatMap(w -> distance.flatMap(d -> change.map(c -> new Boat.TrimTest(w, d, c))));
  }

  private Optional<Boat.HeelTest> heelTest() {
    Optional<Mass> weight = mass("Heel test weight");
    Optional<Length> distance = length("Heel test distance");
    Optional<Double> angle = rows.read("Heel test angle (deg)", BoatReader::degrees);
    remarkIncomplete("heel", weight, distance, angle, "angle");
    return weight.flatMap(w -> distance.flatMap(d -> angle.map(a -> new Boat.HeelTest(w, d, a))));
  }

  private static Optional<Double> degrees(RawCell cell, Remarks remarks) {
    Optional<Double> degrees = Amounts.number(cell, remarks);
    if (degrees.isPresent() && (degrees.get() <= 0 || degrees.get() >= MOST_DEGREES)) {
      remarks.unusable(Code.OUT_OF_RANGE, "it must be above 0 and below 45 degrees");
      return Optional.empty();
    }
    return degrees;
  }

  private void remarkIncomplete(
      String test,
      Optional<?> weight,
      Optional<?> distance,
      Optional<?> change,
      String changeName) {
    Map<String, Optional<?>> needed = new LinkedHashMap<>();
    needed.put("weight", weight);
    needed.put("distance", distance);
    needed.put(changeName, change);
    List<String> missing =
        needed.keySet().stream().filter(name -> needed.get(name).isEmpty()).toList();
    if (!missing.isEmpty() && missing.size() < 3) {
      String sheet = book.tables().get(InputSheets.BOAT).name();
      book.findings()
          .add(Code.TEST_INCOMPLETE, Cell.ofSheet(sheet), test, String.join(" and ", missing));
    }
  }
}
