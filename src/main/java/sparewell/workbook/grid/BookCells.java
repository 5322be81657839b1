package sparewell.workbook.grid;

import java.io.IOException;
import java.io.InputStream;
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
  private final CellFormats formats;

  private BookCells(
      WorkbookPackage book, SheetStream sheets, DateSystem dates, CellFormats formats) {
    this.book = book;
    this.formats = formats;
    this.sheets = sheets;
    this.dates = dates;
  }

  /** Reads what all sheets share: texts and formats. */
  public static BookCells of(WorkbookPackage book) throws WorkbookRefused {
    DateSystem dates = book.date1904() ? DateSystem.FROM_1904 : DateSystem.FROM_1900;
    SharedTexts texts = SharedTexts.none();
    CellFormats formats = CellFormats.none();
    Optional<String> textsPart = book.sharedStringsPart().filter(book::has);
    if (textsPart.isPresent()) {
      texts = part(book, textsPart.get(), SharedTexts::read);
    }
    Optional<String> formatsPart = book.stylesPart().filter(book::has);
    if (formatsPart.isPresent()) {
      formats = part(book, formatsPart.get(), CellFormats::read);
    }
    return new BookCells(book, new SheetStream(texts, formats, dates), dates, formats);
  }

  /** Hands over each row of a worksheet that holds something, top to bottom. */
  public void rows(SheetEntry sheet, Consumer<RawRow> rows) throws WorkbookRefused {
    Optional<String> name = sheet.partName();
    if (name.isPresent()) {
      part(
          book,
          name.get(),
          in -> {
            sheets.read(in, rows);
            return true;
          });
    }
  }

  /** Whether the cell format of an index shows numbers as dates. */
  public boolean showsDates(int format) {
    return formats.shape(String.valueOf(format)) == NumberShape.DATE;
  }

  /** How its day numbers count. */
  public DateSystem dates() {
    return dates;
  }

  /** Computes formulas whose value the file lacks; nothing is loaded before the first. */
  public Formulas formulas() {
    return new Formulas(book, dates);
  }

  private interface Parser<T> {
    T read(InputStream in) throws XMLStreamException;
  }

  private static <T> T part(WorkbookPackage book, String name, Parser<T> parser)
      throws WorkbookRefused {
    try (InputStream in = book.part(name)) {
      return parser.read(in);
    } catch (IOException | XMLStreamException e) {
      throw new WorkbookRefused(
          book.file(),
          "the part " + name + " inside it is damaged",
          "Open it in your spreadsheet program, let it repair the file and save it, or put back a"
              + " backup.");
    }
  }
}
