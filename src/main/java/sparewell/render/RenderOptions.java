package sparewell.render;

import java.time.LocalDate;
import java.util.Map;
import sparewell.finding.Cell;

/**
 * Surroundings that a set of sheets is rendered for.
 *
 * @param date date of the analysis as text, for page headers
 * @param workbookName name of the angler's workbook, for page headers and the title
 * @param currency ISO 4217 code shown in headings of money
 * @param date1904 whether the angler's workbook counts days from 1904 on
 * @param sheetNames actual names of the own sheets by their declared name, where they differ
 */
public record RenderOptions(
    String date,
    String workbookName,
    String currency,
    boolean date1904,
    Map<String, String> sheetNames) {
  public RenderOptions {
    sheetNames = Map.copyOf(sheetNames);
  }

  /** The day that a spreadsheet counts as zero; right for dates from March 1900 on. */
  LocalDate dayZero() {
    return date1904 ? LocalDate.of(1904, 1, 1) : LocalDate.of(1899, 12, 30);
  }

  String actualName(String declared) {
    return sheetNames.getOrDefault(declared, declared);
  }

  /** Place of a cell for the eye, such as {@code Where it is A5}. */
  String shown(Cell cell) {
    String reference = cell.reference();
    return actualName(cell.sheet()) + (reference.isEmpty() ? "" : " " + reference);
  }

  /** Place of a cell as links want it, such as {@code 'Where it is'!A5}. */
  String location(Cell cell) {
    String reference = cell.row() == 0 ? "A1" : cell.reference();
    return "'" + actualName(cell.sheet()).replace("'", "''") + "'!" + reference;
  }
}
