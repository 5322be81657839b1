package sparewell.ooxml;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;

/**
 * The workbook that new sheets are written into: indexes of cell formats, free names of parts and
 * tables. Parts are packed while they are written.
 */
public interface NewSheets {
  /** Index of a cell format; equal formats have one index. */
  int cellFormat(CellFormat format);

  /** Factor from column widths of 7 pixels a digit to widths in the workbook's font, no unit. */
  double widthFactor();

  /** Takes a free name for a part like the wanted one, such as {@code xl/charts/chart1.xml}. */
  String takePart(String wanted);

  /**
   * Takes a free name for a table: the wanted one where no table or name of the angler's has it.
   */
  String takeTableName(String wanted);

  int takeTableId();

  /**
   * Writes a part, packed while it is made.
   *
   * @param name as taken, or the name of the relationships of a part so taken
   * @param contentType empty for relationships, which have their usual one
   */
  void write(String name, String contentType, Content content);

  /**
   * Registers a sheet of ours.
   *
   * @param names its own defined names, such as its print area
   */
  void sheet(String sheet, String part, List<DefinedName> names);

  @FunctionalInterface
  interface Content {
    /** Writes it without closing the stream. */
    void write(OutputStream out) throws IOException;
  }

  /**
   * A cell format; elements are in the main namespace, without prefixes, their attributes in the
   * order of their names.
   *
   * @param builtIn number of the pattern in the file format; negative where it has none
   * @param inside elements of alignment and protection
   */
  record CellFormat(
      String pattern, int builtIn, String font, String fill, String border, String inside) {}

  /**
   * A name of one sheet.
   *
   * @param value what it stands for, as formula text
   */
  record DefinedName(String name, String value) {}
}
