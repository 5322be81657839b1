package sparewell.save;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;

/** Tab names for our sheets that no sheet of the angler's has. */
public final class OwnSheetNames {
  private static final Pattern NUMBERED = Pattern.compile("(.+) \\(\\d+\\)");

  private OwnSheetNames() {}

  /**
   * Names to use, one for each wanted name in that order: the wanted name, or with {@code (2)},
   * {@code (3)} after it where a sheet of the angler's has it, case ignored. Needed before formulas
   * and links are written.
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

  /** Name of ours that a sheet bears, with or without a number after it; empty for none. */
  public static Optional<String> wanted(String actual, List<String> names) {
    Matcher numbered = NUMBERED.matcher(actual);
    String plain = numbered.matches() ? numbered.group(1) : actual;
    return names.stream().filter(name -> key(name).equals(key(plain))).findFirst();
  }

  static String key(String name) {
    return name.strip().toLowerCase(Locale.ROOT);
  }
}
