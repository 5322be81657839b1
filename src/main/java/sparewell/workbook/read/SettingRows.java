package sparewell.workbook.read;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import sparewell.finding.Code;
import sparewell.workbook.InputColumn;
import sparewell.workbook.InputSheet;
import sparewell.workbook.grid.RawCell;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.NearMiss;
import sparewell.workbook.value.Remarks;
import sparewell.workbook.value.Words;

/** The rows of a sheet that holds a name and a value in each: Settings and Boat. */
final class SettingRows {
  /** A row whose name is known, its value seen as a column of its own. */
  record Named(Row row, BoundColumn value) {}

  private final Map<String, Named> byName = new HashMap<>();
  private final InputSheet sheet;
  private final InputSheet known;

  SettingRows(InputSheet sheet, InputSheet known) {
    this.sheet = sheet;
    this.known = known;
  }

  /** Takes in one row; an unknown or repeated name is remarked. */
  void add(Row row) {
    String nameColumn = sheet.columns().get(0).name();
    Optional<String> name = row.text(nameColumn);
    if (name.isEmpty()) {
      return;
    }
    int valueIndex = row.column("Value").index();
    Optional<BoundColumn> bound = BoundColumn.of(known.columns(), false, valueIndex, name.get());
    if (bound.isEmpty()) {
      row.say(nameColumn, Code.UNKNOWN_SETTING, name.get(), sheet.name(), meant(name.get()));
      return;
    }
    String key = bound.get().column().name();
    Named first = byName.get(key);
    if (first != null) {
      row.leaveOut(nameColumn, Code.DUPLICATE, name.get(), first.row().at(nameColumn).reference());
      return;
    }
    if (bound.get().unitUnknown()) {
      row.say(
          nameColumn, Code.HEADER_UNIT, name.get(), bound.get().knownUnits(), "the standard unit");
    }
    byName.put(key, new Named(row, bound.get()));
  }

  private String meant(String name) {
    List<String> names = known.columns().stream().map(column -> Names.fold(column.name())).toList();
    return NearMiss.of(Names.fold(name), names)
        .map(near -> "; did you mean '" + known.columns().get(names.indexOf(near)).name() + "'?")
        .orElse("");
  }

  /** The row of that name, where it has a value other than the word for its standard. */
  Optional<Named> get(String name) {
    return Optional.ofNullable(byName.get(name))
        .filter(named -> named.row().cell(named.value().index()).isPresent())
        .filter(named -> !saysStandard(named, known.column(name)));
  }

  <T> Optional<T> read(String name, BiFunction<RawCell, Remarks, Optional<T>> parser) {
    return get(name).flatMap(named -> named.row().read(named.value(), parser));
  }

  private static boolean saysStandard(Named named, InputColumn column) {
    return named
        .row()
        .cell(named.value().index())
        .map(Words::text)
        .filter(text -> text.chars().anyMatch(Character::isLetter))
        .filter(text -> Names.fold(text).equals(Names.fold(column.standard())))
        .isPresent();
  }
}
