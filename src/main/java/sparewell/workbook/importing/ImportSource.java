package sparewell.workbook.importing;

import java.nio.file.Path;
import java.util.List;
import sparewell.workbook.InputSheet;
import sparewell.workbook.InputSheets;

/**
 * A file of rows for an input sheet.
 *
 * @param sheet one of {@link #SHEETS}
 * @param file the file as it was named
 */
public record ImportSource(InputSheet sheet, Path file) {
  /** The sheets that take rows, in the order in which their files are read. */
  public static final List<InputSheet> SHEETS =
      List.of(
          InputSheets.STOCK,
          InputSheets.TRIPS,
          InputSheets.STYLE_HOURS,
          InputSheets.LOSSES,
          InputSheets.RESTOCKS,
          InputSheets.TRANSFERS,
          InputSheets.BOX_LOG,
          InputSheets.COUNTS);

  public ImportSource {
    if (!SHEETS.contains(sheet)) {
      throw new IllegalArgumentException("no rows are imported into " + sheet.name());
    }
  }
}
