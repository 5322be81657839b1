package sparewell.save;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import javax.xml.stream.XMLStreamException;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.SafeXml;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;

/** Reads what was written and compares it with what the angler had, before it may replace it. */
final class ReadBack {
  private ReadBack() {}

  /**
   * Compares the written file with the original.
   *
   * @throws WorkbookRefused where anything of the angler's differs or anything of ours is missing
   */
  static void check(WorkbookPackage original, Graft graft, List<OwnSheet> sheets, Path fresh)
      throws WorkbookRefused, IOException, XMLStreamException {
    try (WorkbookPackage written = open(original, fresh)) {
      Set<String> wanted = new TreeSet<>();
      for (String entry : original.entryNames()) {
        String key = PartNames.key(entry);
        if (graft.dropped().contains(key)) {
          continue;
        }
        wanted.add(key);
        if (!graft.edited().contains(key) && !same(original, written, entry)) {
          throw failed(original, entry);
        }
      }
      graft.added().forEach(a -> wanted.add(PartNames.key(a)));
      Set<String> there =
          written.entryNames().stream()
              .map(PartNames::key)
              .collect(Collectors.toCollection(TreeSet::new));
      if (!there.equals(wanted)) {
        throw failed(original, "list of parts");
      }
      EditedParts.check(original, written, graft);
      checkSheets(original, written, sheets);
    }
  }

  /**
   * Compares a file with new rows with the original.
   *
   * @param edited keys of the parts that may differ
   * @throws WorkbookRefused where another part differs, or the rows are not as asked
   */
  static void checkAppended(AppendRequest append, Set<String> edited, Path fresh)
      throws WorkbookRefused, IOException, XMLStreamException {
    WorkbookPackage original = append.original();
    try (WorkbookPackage written = open(original, fresh)) {
      if (!written.entryNames().equals(original.entryNames())) {
        throw failed(original, "list of parts");
      }
      for (String entry : original.entryNames()) {
        if (edited.contains(PartNames.key(entry))) {
          try (InputStream in = written.part(entry)) {
            SafeXml.checkWellFormed(in);
          }
        } else if (!same(original, written, entry)) {
          throw failed(original, entry);
        }
      }
      if (!append.proof().holds(written)) {
        throw failed(original, "the rows");
      }
    }
  }

  private static WorkbookPackage open(WorkbookPackage original, Path fresh) throws WorkbookRefused {
    try {
      return WorkbookPackage.open(fresh);
    } catch (WorkbookRefused e) {
      throw failed(original, e.problem());
    }
  }

  private static boolean same(WorkbookPackage one, WorkbookPackage other, String entry)
      throws IOException {
    if (!other.entryName(entry).filter(entry::equals).isPresent()) {
      return false;
    }
    byte[] a = new byte[1 << 16];
    byte[] b = new byte[1 << 16];
    try (InputStream first = new BufferedInputStream(one.part(entry));
        InputStream second = new BufferedInputStream(other.part(entry))) {
      while (true) {
        int n = first.readNBytes(a, 0, a.length);
        int m = second.readNBytes(b, 0, b.length);
        if (n != m || !java.util.Arrays.equals(a, 0, n, b, 0, m)) {
          return false;
        }
        if (n == 0) {
          return true;
        }
      }
    }
  }

  private static void checkSheets(
      WorkbookPackage original, WorkbookPackage written, List<OwnSheet> sheets)
      throws WorkbookRefused, IOException, XMLStreamException {
    List<String> theirs = new ArrayList<>();
    List<String> ours = new ArrayList<>();
    for (SheetEntry sheet : written.sheets()) {
      (sheet.own() ? ours : theirs).add(sheet.name());
      if (sheet.own()) {
        if (sheet.partName().isEmpty()) {
          throw failed(original, sheet.name());
        }
        try (InputStream in = written.part(sheet.partName().get())) {
          SafeXml.checkWellFormed(in);
        }
      }
    }
    List<String> before =
        original.sheets().stream().filter(s -> !s.own()).map(SheetEntry::name).toList();
    Set<String> wanted = sheets.stream().map(OwnSheet::name).collect(Collectors.toSet());
    if (!theirs.equals(before)
        || !Set.copyOf(ours).equals(wanted)
        || ours.size() != wanted.size()) {
      throw failed(original, "list of sheets");
    }
  }

  static WorkbookRefused failed(WorkbookPackage original, String where) {
    return Refusals.refused(
        original.file(),
        "the new workbook did not pass its comparison with yours ("
            + where
            + "), so it was thrown away",
        "Save it anew from your spreadsheet program and run again.");
  }
}
