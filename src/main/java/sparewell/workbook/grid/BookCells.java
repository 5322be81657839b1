package sparewell.workbook.grid;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.xml.stream.XMLStreamException;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;

/** The cells of an opened workbook, sheet by sheet. */
public final class BookCells {
  private final WorkbookPackage book;
  private final SheetStream sheets;
  private final DateSystem dates;

  private BookCells(WorkbookPackage book, SheetStream sheets, DateSystem dates) {
    this.book = book;
    this.sheets = sheets;
    this.dates = dates;
  }

  public static BookCells of(WorkbookPackage book) throws WorkbookRefused {
    DateSystem dates = book.date1904() ? DateSystem.FROM_1904 : DateSystem.FROM_1900;
    List<String> texts =
        part(book, book.related("sharedStrings"), SharedParts::texts).orElse(List.of());
    Optional<String> styles = book.related("styles").filter(book::has);
    List<NumberShape> shapes =
        styles.isPresent() ? SharedParts.shapes(book.xml(styles.get()).root()) : List.of();
    return new BookCells(book, new SheetStream(texts, shapes, dates), dates);
  }

  public void rows(SheetEntry sheet, Consumer<RawRow> rows) throws WorkbookRefused {
    part(
        book,
        sheet.partName(),
        in -> {
          sheets.read(in, rows);
          return true;
        });
  }

  /** Returns whether the cell format of an index shows numbers as dates. */
  public boolean showsDates(int format) {
    return sheets.shape(String.valueOf(format)) == NumberShape.DATE;
  }

  public DateSystem dates() {
    return dates;
  }

  /** Evaluator of formulas without a stored value; loads nothing before the first. */
  public Formulas formulas() {
    return new Formulas(book, dates);
  }

  private interface Parser<T> {
    T read(InputStream in) throws XMLStreamException;
  }

  private static <T> Optional<T> part(WorkbookPackage book, Optional<String> name, Parser<T> parser)
      throws WorkbookRefused {
    Optional<String> there = name.filter(book::has);
    if (there.isEmpty()) {
      return Optional.empty();
    }
    try (InputStream in = book.part(there.get())) {
      return Optional.of(parser.read(in));
    } catch (IOException | XMLStreamException e) {
      throw book.damaged(there.get());
    }
  }
}
