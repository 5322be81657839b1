package sparewell.save.append;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.IntPredicate;
import java.util.regex.Matcher;
import sparewell.ooxml.NewCell;
import sparewell.ooxml.NewRows;
import sparewell.ooxml.SheetText;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.append.SheetRow.Cell;
import sparewell.save.xml.XmlEdits;

/**
 * Adds rows below a table in a sheet's part: in the rows that stand there blank, else in new ones.
 * Formats go on as in the table's last row; everything else of the part stays to the letter.
 *
 * @see "ECMA-376 part 1, section 18.3.1 (worksheets)"
 */
final class RowAppend {
  private static final int MOST_ROWS = 1_048_576;
  private static final List<String> GOING_ON = List.of("s", "customFormat", "customHeight", "ht");

  private final Path file;
  private final NewRows added;
  private final SheetText sheet;
  private final IntPredicate showsDates;
  private final String prefix;
  private final XmlElement root;
  private final Map<Integer, SheetRow> targets = new TreeMap<>();
  private SheetRow model = SheetRow.fresh(0);
  private String head = "";
  private String tail = "";

  RowAppend(Path file, NewRows added, SheetText sheet, IntPredicate showsDates) {
    this.file = file;
    this.added = added;
    this.sheet = sheet;
    this.showsDates = showsDates;
    this.prefix = sheet.prefix();
    this.root = sheet.frame().root();
  }

  byte[] apply() throws WorkbookRefused {
    requireRoom();
    split();
    StringBuilder rows = new StringBuilder(head);
    int number = added.firstNew();
    int lastColumn = added.lastColumn();
    for (List<NewCell> cells : added.rows()) {
      SheetRow row = row(number, cells);
      row.write(prefix, rows);
      lastColumn = Math.max(lastColumn, row.cells().keySet().stream().max(Integer::compare).get());
      number++;
    }
    XmlEdits edits = new XmlEdits(sheet.frame());
    edits.append(root.child("sheetData").orElseThrow(), rows.append(tail).toString());
    growDimension(edits, lastColumn);
    new RuleGrowth(sheet.frame(), edits, added).grow();
    return edits.apply();
  }

  private void requireRoom() throws WorkbookRefused {
    if (added.lastNew() > MOST_ROWS) {
      throw refused("rows full", "");
    }
    if (root.child("sheetProtection").filter(p -> p.isTrue("sheet")).isPresent()) {
      throw refused("rows protected", "");
    }
    Area room =
        new Area(added.firstNew(), added.firstColumn(), added.lastNew(), added.lastColumn());
    for (XmlElement merged :
        root.child("mergeCells").map(m -> m.children("mergeCell")).orElse(List.of())) {
      String reference = merged.value("ref").orElse("");
      if (Area.of(reference).filter(room::meets).isPresent()) {
        throw refused("rows merged", reference);
      }
    }
  }

  /** Parts the text of the rows: what stays before and behind, and the rows that are filled. */
  private void split() throws WorkbookRefused {
    String text = sheet.rows();
    Matcher rows = SheetRow.elements(text, prefix + "row");
    int number = 0;
    int headEnd = text.length();
    int tailStart = text.length();
    while (rows.find()) {
      Map<String, String> attributes = SheetRow.attributes(rows.group(1));
      String named = attributes.getOrDefault("r", "");
      int its = named.matches("\\d{1,7}") ? Integer.parseInt(named) : number + 1;
      if (its <= number) {
        throw refused("rows unordered", "");
      }
      number = its;
      if (number == added.modelRow()) {
        model = SheetRow.of(number, attributes, rows.group(2), prefix);
      }
      if (number >= added.firstNew()) {
        headEnd = Math.min(headEnd, rows.start());
      }
      if (number > added.lastNew()) {
        tailStart = Math.min(tailStart, rows.start());
      } else if (number >= added.firstNew()) {
        targets.put(number, SheetRow.of(number, attributes, rows.group(2), prefix));
      }
    }
    head = text.substring(0, headEnd);
    tail = text.substring(tailStart);
  }

  private SheetRow row(int number, List<NewCell> cells) throws WorkbookRefused {
    SheetRow row = targets.computeIfAbsent(number, this::likeTheModel);
    for (int column : model.cells().keySet()) {
      boolean within = column >= added.firstColumn() && column <= added.lastColumn();
      if (within && !row.cells().containsKey(column)) {
        put(row, column, style(row, column), Map.of(), "");
      }
    }
    for (Map.Entry<Integer, Cell> there : row.cells().entrySet()) {
      int column = there.getKey();
      boolean within = column >= added.firstColumn() && column <= added.lastColumn();
      boolean wanted = cells.stream().anyMatch(c -> c.column() == column);
      Cell cell = there.getValue();
      // A formula of the angler's beside the new cells goes on reckoning; anything else is in the
      // way.
      if (cell.holdsAnything() && (wanted || within && !cell.formula())) {
        throw refused("rows taken", Area.letters(column) + number);
      }
    }
    for (NewCell cell : cells) {
      value(row, cell);
    }
    return row;
  }

  private SheetRow likeTheModel(int number) {
    SheetRow row = SheetRow.fresh(number);
    boolean high = model.attributes().getOrDefault("customHeight", "0").matches("1|true");
    for (String name : GOING_ON) {
      if (model.attributes().containsKey(name) && (high || !name.equals("ht"))) {
        row.attributes().put(name, model.attributes().get(name));
      }
    }
    return row;
  }

  private void value(SheetRow row, NewCell cell) {
    Optional<String> style = style(row, cell.column());
    if (cell.kind() == NewCell.Kind.FORMULA) {
      String formula = "<" + prefix + "f>" + XmlText.escaped(cell.text()) + "</" + prefix + "f>";
      put(row, cell.column(), style, Map.of(), formula);
      return;
    }
    boolean dates =
        showsDates.test(style.filter(s -> s.matches("\\d{1,9}")).map(Integer::valueOf).orElse(0));
    boolean number =
        cell.kind() == NewCell.Kind.NUMBER || cell.kind() == NewCell.Kind.DATE && dates;
    if (number) {
      boolean misread = dates && cell.kind() == NewCell.Kind.NUMBER;
      put(
          row,
          cell.column(),
          misread ? Optional.empty() : style,
          Map.of(),
          "<" + prefix + "v>" + plain(cell.number()) + "</" + prefix + "v>");
    } else {
      put(row, cell.column(), style, Map.of("t", "inlineStr"), inline(cell.text()));
    }
  }

  private static String plain(double number) {
    BigDecimal shown = new BigDecimal(Double.toString(number)).stripTrailingZeros();
    return shown.signum() == 0 ? "0" : shown.toPlainString();
  }

  private String inline(String text) {
    // What looks like an escape of the format must not be read as one (22.9.2.19).
    String literal = text.replaceAll("_(?=x[0-9A-Fa-f]{4}_)", "_x005F_");
    return "<%1$sis><%1$st xml:space=\"preserve\">%2$s</%1$st></%1$sis>"
        .formatted(prefix, XmlText.escaped(literal));
  }

  private static void put(
      SheetRow row, int column, Optional<String> style, Map<String, String> more, String inside) {
    Map<String, String> attributes = new TreeMap<>(more);
    style.ifPresent(s -> attributes.put("s", s));
    row.cells().put(column, new Cell(attributes, inside));
  }

  /** The cell's own format, else that of the model's cell, its row, or the column. */
  private Optional<String> style(SheetRow row, int column) {
    return Optional.ofNullable(row.cells().get(column))
        .flatMap(Cell::style)
        .or(() -> Optional.ofNullable(model.cells().get(column)).flatMap(Cell::style))
        .or(row::style)
        .or(() -> columnStyle(column));
  }

  private Optional<String> columnStyle(int column) {
    return root.child("cols").map(c -> c.children("col")).orElse(List.of()).stream()
        .filter(c -> c.number("min").orElse(0) <= column)
        .filter(c -> column <= c.number("max").orElse(0))
        .findFirst()
        .flatMap(c -> c.value("style"));
  }

  private void growDimension(XmlEdits edits, int lastColumn) {
    Optional<XmlElement> dimension = root.child("dimension");
    Optional<Area> was = dimension.flatMap(d -> d.value("ref")).flatMap(Area::of);
    if (was.isPresent()) {
      Area now =
          new Area(
              was.get().firstRow(),
              Math.min(was.get().firstColumn(), added.firstColumn()),
              Math.max(was.get().lastRow(), added.lastNew()),
              Math.max(was.get().lastColumn(), lastColumn));
      if (!now.equals(was.get())) {
        edits.set(dimension.get(), "ref", now.reference());
      }
    }
  }

  private WorkbookRefused refused(String key, String detail) {
    return WorkbookRefused.of(file, key, added.sheet().name(), detail);
  }
}
