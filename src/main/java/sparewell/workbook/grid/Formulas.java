package sparewell.workbook.grid;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellValue;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.usermodel.FormulaEvaluator;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;

/**
 * Evaluates formulas without a stored value. The workbook is loaded at the first use, and not at
 * all where it is larger than 20 MB packed or 40 MB unpacked: formulas then count as blank. Safe
 * for several threads.
 */
public final class Formulas {
  private static final long MOST_SHEET_BYTES = 40L << 20;
  private static final long MOST_FILE_BYTES = 20L << 20;

  /** Functions whose value changes by itself, as results must not. */
  private static final Pattern VOLATILE =
      Pattern.compile("\\b(TODAY|NOW|RAND|RANDBETWEEN|RANDARRAY)\\s*\\(", Pattern.CASE_INSENSITIVE);

  /** Errors by which the evaluator says that it cannot compute a formula. */
  private static final Set<FormulaError> NOT_COMPUTED =
      EnumSet.of(
          FormulaError.NAME, // most often a function that it does not know
          FormulaError.CIRCULAR_REF,
          FormulaError.FUNCTION_NOT_IMPLEMENTED);

  private final WorkbookPackage book;
  private final DateSystem dates;
  private Optional<Loaded> loaded = Optional.empty();
  private boolean tried;

  private record Loaded(Workbook workbook, FormulaEvaluator evaluator) {}

  Formulas(WorkbookPackage book, DateSystem dates) {
    this.book = book;
    this.dates = dates;
  }

  /** The cell with its computed value; absent where it cannot be computed. */
  public synchronized Optional<RawCell> compute(String sheet, int row, RawCell cell) {
    if (!tried) {
      tried = true;
      loaded = load();
    }
    try {
      return loaded.flatMap(
          all ->
              Optional.ofNullable(all.workbook().getSheet(sheet))
                  .flatMap(found -> cellAt(found, row, cell.column()))
                  .flatMap(found -> computed(all.evaluator(), found, cell)));
    } catch (RuntimeException | StackOverflowError e) {
      return Optional.empty(); // whatever the evaluator cannot do counts as not computed
    }
  }

  private static Optional<Cell> cellAt(Sheet sheet, int row, int column) {
    Row found = sheet.getRow(row - 1);
    return found == null ? Optional.empty() : Optional.ofNullable(found.getCell(column - 1));
  }

  private Optional<RawCell> computed(FormulaEvaluator evaluator, Cell at, RawCell raw) {
    if (VOLATILE.matcher(at.getCellFormula()).find()) {
      return Optional.empty();
    }
    CellValue value = evaluator.evaluate(at);
    if (value == null) {
      return Optional.empty();
    }
    return switch (value.getCellType()) {
      case NUMERIC ->
          Optional.of(RawCell.number(raw.column(), value.getNumberValue(), raw.shape(), dates));
      case STRING -> Optional.of(RawCell.text(raw.column(), value.getStringValue()));
      case BOOLEAN ->
          Optional.of(
              RawCell.of(
                  raw.column(), RawCell.Kind.BOOLEAN, value.getBooleanValue() ? "TRUE" : "FALSE"));
      case ERROR -> error(raw, FormulaError.forInt(value.getErrorValue()));
      default -> Optional.empty();
    };
  }

  private static Optional<RawCell> error(RawCell raw, FormulaError error) {
    return NOT_COMPUTED.contains(error)
        ? Optional.empty()
        : Optional.of(RawCell.of(raw.column(), RawCell.Kind.ERROR, error.getString()));
  }

  private Optional<Loaded> load() {
    try {
      if (Files.size(book.file()) > MOST_FILE_BYTES || unpacked() > MOST_SHEET_BYTES) {
        return Optional.empty();
      }
      try (InputStream in = Files.newInputStream(book.file())) {
        Workbook workbook = new XSSFWorkbook(in);
        return Optional.of(
            new Loaded(workbook, workbook.getCreationHelper().createFormulaEvaluator()));
      }
    } catch (IOException | RuntimeException e) {
      return Optional.empty();
    }
  }

  private long unpacked() throws IOException {
    long bytes = 0;
    for (SheetEntry sheet : book.sheets()) {
      if (sheet.partName().isPresent() && bytes <= MOST_SHEET_BYTES) {
        try (InputStream in = book.part(sheet.partName().get())) {
          bytes += in.transferTo(java.io.OutputStream.nullOutputStream());
        }
      }
    }
    return bytes;
  }
}
