package sparewell.ooxml;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;

/**
 * The workbook in which new sheets will stand, as far as their writer must know it: indexes of cell
 * formats, free names of parts and tables. What is written goes straight into its final form.
 */
public interface NewSheets {
  /**
   * Index of a cell format, the same for the same format.
   *
   * @param format in the words of the file format
   */
  int cellFormat(CellFormat format);

  /** What column widths of 7 pixels a digit are multiplied with to be as wide there. */
  double widthFactor();

  /** Takes a free name for a part like the wanted one, such as {@code xl/charts/chart1.xml}. */
  String takePart(String wanted);

  /**
   * Takes a free name for a table: the wanted one where no table or name of the angler's has it.
   */
  String takeTableName(String wanted);

  /** Takes a free id for a table. */
  int takeTableId();

  /**
   * Writes a part, packed while it is made.
   *
   * @param name as taken, or the name of the relationships of a part so taken
   * @param contentType empty for relationships, which have their usual one
   */
  void write(String name, String contentType, Content content) throws IOException;

  /**
   * Says which part is a sheet of ours.
   *
   * @param sheet its tab
   * @param part its part
   * @param names its own defined names, such as its print area
   */
  void sheet(String sheet, String part, List<DefinedName> names);

  /** What a part holds. */
  @FunctionalInterface
  interface Content {
    /** Writes it; the stream is not closed. */
    void write(OutputStream out) throws IOException;
  }

  /**
   * A cell format; elements are in the main namespace, without prefixes.
   *
   * @param pattern number pattern
   * @param builtIn number of the pattern in the file format; negative where it has none
   * @param font the font's element
   * @param fill the fill's element
   * @param border the border's element
   * @param inside elements of alignment and protection
   */
  record CellFormat(
      String pattern, int builtIn, String font, String fill, String border, String inside) {}

  /**
   * A name of one sheet.
   *
   * @param name the name
   * @param value what it stands for, as formula text
   */
  record DefinedName(String name, String value) {}
}
