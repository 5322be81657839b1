package sparewell.ooxml;

import java.util.Optional;

/**
 * Marker of sheets that this program wrote: a hidden name of the sheet whose value is the name of
 * its tab. Spreadsheet programs keep it on saving. A copied or renamed sheet has another tab name,
 * so it is the angler's.
 */
public final class OwnMarker {
  public static final String NAME = "Sparewell_sheet";

  private OwnMarker() {}

  public static String valueFor(String sheetName) {
    return "\"" + sheetName.replace("\"", "\"\"") + "\"";
  }

  /** Returns whether a defined name of a sheet marks it as ours. */
  static boolean marks(String definedName, String value, Optional<String> sheetName) {
    return definedName.equalsIgnoreCase(NAME)
        && sheetName.map(OwnMarker::valueFor).filter(value.trim()::equals).isPresent();
  }
}
