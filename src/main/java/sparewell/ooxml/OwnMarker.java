package sparewell.ooxml;

import java.util.Optional;

/**
 * The marker of sheets that we wrote: a hidden name of the sheet's own whose value is the text of
 * the tab's name. A copy of the sheet takes the name along but not the tab, and so is the angler's;
 * so is a renamed sheet. Spreadsheet programs keep such a name when they save.
 */
public final class OwnMarker {
  /** The defined name. */
  public static final String NAME = "Sparewell_sheet";

  private OwnMarker() {}

  /** The value that marks the sheet of this name. */
  public static String valueFor(String sheetName) {
    return "\"" + sheetName.replace("\"", "\"\"") + "\"";
  }

  /** Returns whether a defined name of a sheet marks it as ours. */
  static boolean marks(String definedName, String value, Optional<String> sheetName) {
    return definedName.equalsIgnoreCase(NAME)
        && sheetName.map(OwnMarker::valueFor).filter(value.trim()::equals).isPresent();
  }
}
