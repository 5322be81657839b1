package sparewell.save;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import javax.xml.stream.XMLStreamException;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.SafeXml;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.save.append.AppendRequest;
import sparewell.save.file.Refusals;

/** Reads a written file and compares it with the original, before it may replace that. */
final class ReadBack {
  private ReadBack() {}

  /**
   * Compares the written file with the original.
   *
   * @throws WorkbookRefused where anything of the angler's differs or anything of ours is missing
   */
  static void check(WorkbookPackage original, NewPackage plan, List<OwnSheet> sheets, Path fresh)
      throws WorkbookRefused, IOException {
    try (WorkbookPackage written = open(original, fresh)) {
      checkEntries(original, written, plan);
      EditedParts.check(original, written, plan);
      checkSheets(original, written, plan, sheets);
    }
  }

  /**
   * Compares a file with new rows with the original.
   *
   * @throws WorkbookRefused where another part differs, or the rows are not as requested
   */
  static void checkAppended(AppendRequest append, NewPackage plan, Path fresh)
      throws WorkbookRefused, IOException {
    WorkbookPackage original = append.original();
    try (WorkbookPackage written = open(original, fresh)) {
      checkEntries(original, written, plan);
      for (String edited : plan.edited().keySet()) {
        try (InputStream in = written.part(edited)) {
          SafeXml.checkWellFormed(in);
        } catch (XMLStreamException e) {
          throw failed(original, edited);
        }
      }
      if (!append.proof().holds(written)) {
        throw failed(original, "the rows");
      }
    }
  }

  /** Compares the lists of parts, and each part with what it should be. */
  private static void checkEntries(
      WorkbookPackage original, WorkbookPackage written, NewPackage plan)
      throws WorkbookRefused, IOException {
    Set<String> wanted = new TreeSet<>();
    for (String entry : original.entryNames()) {
      String key = PartNames.key(entry);
      if (!plan.dropped().contains(key)) {
        wanted.add(key);
        if (!kept(original, plan.edited(), entry, written)) {
          throw failed(original, entry);
        }
      }
    }
    for (Map.Entry<String, PackedPart> part : plan.added().entrySet()) {
      wanted.add(PartNames.key(part.getKey()));
      if (!part.getValue().is(written, part.getKey())) {
        throw failed(original, part.getKey());
      }
    }
    Set<String> there =
        written.entryNames().stream()
            .map(PartNames::key)
            .collect(Collectors.toCollection(TreeSet::new));
    if (!there.equals(wanted)) {
      throw failed(original, "list of parts");
    }
  }

  private static WorkbookPackage open(WorkbookPackage original, Path fresh) throws WorkbookRefused {
    try {
      return WorkbookPackage.open(fresh);
    } catch (WorkbookRefused e) {
      throw failed(original, e.problem());
    }
  }

  /**
   * Returns whether an entry is as edited, and where it was not edited the same packed bytes as
   * before.
   */
  private static boolean kept(
      WorkbookPackage original,
      Map<String, PackedPart> edited,
      String entry,
      WorkbookPackage written)
      throws IOException {
    PackedPart changed = edited.get(PartNames.key(entry));
    return changed == null ? original.sameEntry(entry, written) : changed.is(written, entry);
  }

  private static void checkSheets(
      WorkbookPackage original, WorkbookPackage written, NewPackage plan, List<OwnSheet> sheets)
      throws WorkbookRefused {
    List<String> theirs = new ArrayList<>();
    List<String> ours = new ArrayList<>();
    for (SheetEntry sheet : written.sheets()) {
      (sheet.own() ? ours : theirs).add(sheet.name());
      if (sheet.own() && sheet.partName().filter(plan.added()::containsKey).isEmpty()) {
        throw failed(original, sheet.name());
      }
    }
    List<String> before =
        new ArrayList<>(
            original.sheets().stream().filter(s -> !s.own()).map(SheetEntry::name).toList());
    sheets.stream().filter(s -> !s.marked()).map(OwnSheet::name).forEach(before::add);
    Set<String> wanted =
        sheets.stream().filter(OwnSheet::marked).map(OwnSheet::name).collect(Collectors.toSet());
    if (!theirs.equals(before)
        || !Set.copyOf(ours).equals(wanted)
        || ours.size() != wanted.size()) {
      throw failed(original, "list of sheets");
    }
  }

  static WorkbookRefused failed(WorkbookPackage original, String where) {
    return Refusals.refused(
        original.file(),
        "the new workbook did not pass its comparison with yours (%s), so it was discarded"
            .formatted(where),
        "Save it again from your spreadsheet program and run again.");
  }
}
