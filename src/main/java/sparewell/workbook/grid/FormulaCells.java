package sparewell.workbook.grid;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.apache.poi.ss.util.CellRangeAddress;
import sparewell.ooxml.SafeXml;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;

/**
 * Formulas of some rows of a sheet as text, and the cells in them that hold anything.
 *
 * @see "ECMA-376 part 1, section 18.3.1.40 (f)"
 */
public final class FormulaCells {
  private final IntPredicate wanted;
  private final Map<Integer, Map<Integer, String>> formulas = new TreeMap<>();
  private final Map<Integer, Set<Integer>> unclear = new HashMap<>();
  private final Map<Integer, Set<Integer>> filled = new HashMap<>();
  private final List<CellRangeAddress> merged = new ArrayList<>();
  private final Map<String, Shared> shared = new HashMap<>();

  /** A formula that other cells share, and where it stands. */
  private record Shared(int row, int column, String text) {}

  private FormulaCells(IntPredicate wanted) {
    this.wanted = wanted;
  }

  /** Reads the wanted rows of a sheet that has a part. */
  public static FormulaCells read(WorkbookPackage book, SheetEntry sheet, IntPredicate wanted)
      throws WorkbookRefused {
    FormulaCells cells = new FormulaCells(wanted);
    String part = sheet.partName().orElseThrow();
    try (InputStream in = book.part(part)) {
      cells.read(SafeXml.reader(in));
    } catch (IOException | XMLStreamException damaged) {
      throw book.damaged(part);
    }
    return cells;
  }

  /** The plain formulas of a row by column; those over several cells at once are left out. */
  public Map<Integer, String> of(int row) {
    return formulas.getOrDefault(row, Map.of());
  }

  /** Columns of a row whose formula is not known: over several cells at once, or not copied. */
  public Set<Integer> unclear(int row) {
    return new TreeSet<>(unclear.getOrDefault(row, Set.of()));
  }

  /** Returns whether a cell holds anything, or is merged with others. */
  public boolean filled(int row, int column) {
    return filled.getOrDefault(row, Set.of()).contains(column)
        || merged.stream().anyMatch(area -> area.isInRange(row - 1, column - 1));
  }

  private void read(XMLStreamReader xml) throws XMLStreamException {
    int row = 0;
    int column = 0;
    while (xml.hasNext()) {
      if (xml.next() == XMLStreamConstants.START_ELEMENT) {
        switch (xml.getLocalName()) {
          case "row" -> {
            row = SheetStream.rowNumber(xml.getAttributeValue(null, "r"), row + 1);
            column = 0;
          }
          case "c" ->
              column = SheetStream.columnNumber(xml.getAttributeValue(null, "r"), column + 1);
          case "v", "is" -> fill(row, column);
          case "f" -> formula(xml, row, column);
          case "mergeCell" -> merge(xml.getAttributeValue(null, "ref"));
          default -> {}
        }
      }
    }
    xml.close();
  }

  private void fill(int row, int column) {
    if (wanted.test(row)) {
      filled.computeIfAbsent(row, r -> new HashSet<>()).add(column);
    }
  }

  private void formula(XMLStreamReader xml, int row, int column) throws XMLStreamException {
    String type = Optional.ofNullable(xml.getAttributeValue(null, "t")).orElse("normal");
    String group = xml.getAttributeValue(null, "si");
    String text = xml.getElementText();
    fill(row, column);
    Optional<String> plain = Optional.of(text).filter(t -> !t.isBlank());
    if (type.equals("shared") && group != null) {
      if (plain.isPresent()) {
        shared.put(group, new Shared(row, column, text));
      } else {
        plain =
            Optional.ofNullable(shared.get(group))
                .flatMap(
                    first ->
                        FormulaText.moved(
                            first.text(), row - first.row(), column - first.column()));
      }
    } else if (!type.equals("normal")) {
      plain = Optional.empty(); // an array or a data table
    }
    if (wanted.test(row)) {
      plain.ifPresentOrElse(
          known -> formulas.computeIfAbsent(row, r -> new TreeMap<>()).put(column, known),
          () -> unclear.computeIfAbsent(row, r -> new HashSet<>()).add(column));
    }
  }

  private void merge(String reference) {
    try {
      merged.add(CellRangeAddress.valueOf(reference));
    } catch (RuntimeException damaged) {
      // no area: it covers no cell
    }
  }
}
