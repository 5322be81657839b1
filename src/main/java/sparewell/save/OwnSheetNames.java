package sparewell.save;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;

/** Tab names for our sheets that no sheet of the angler's has. */
public final class OwnSheetNames {
  private OwnSheetNames() {}

  /**
   * The names to use, one for each wanted name and in that order: the wanted name, or where a sheet
   * of the angler's has it (case aside) the name with {@code (2)}, then {@code (3)} behind it. Call
   * it before formulas and links are made. A name that differs from the wanted one deserves a
   * finding.
   */
  public static List<String> resolve(WorkbookPackage book, List<String> wanted) {
    Set<String> taken = new HashSet<>();
    for (SheetEntry sheet : book.sheets()) {
      if (!sheet.own()) {
        taken.add(key(sheet.name()));
      }
    }
    List<String> names = new ArrayList<>();
    for (String want : wanted) {
      String name = want;
      for (int n = 2; !taken.add(key(name)); n++) {
        name = want + " (" + n + ")";
      }
      names.add(name);
    }
    return List.copyOf(names);
  }

  static String key(String name) {
    return name.strip().toLowerCase(Locale.ROOT);
  }
}
