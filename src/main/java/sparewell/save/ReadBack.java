package sparewell.save;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.xml.stream.XMLStreamException;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.SafeXml;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.save.append.AppendRequest;

/** Reads a written file and compares it with the original, before it may replace that. */
final class ReadBack {
  private final WorkbookPackage original;
  private final NewPackage plan;
  private final WorkbookPackage written;

  private ReadBack(NewPackage plan, WorkbookPackage written) {
    this.original = plan.book();
    this.plan = plan;
    this.written = written;
  }

  /** Refuses where anything of the angler's differs or anything of ours is missing. */
  static void check(NewPackage plan, List<OwnSheet> sheets, Path fresh)
      throws WorkbookRefused, IOException {
    try (WorkbookPackage written = open(plan.book(), fresh)) {
      ReadBack back = new ReadBack(plan, written);
      back.checkEntries();
      EditedParts.check(plan.book(), written, plan);
      back.checkSheets(sheets);
    }
  }

  /** Refuses where another part differs, or the rows are not as requested. */
  static void checkAppended(AppendRequest append, NewPackage plan, Path fresh)
      throws WorkbookRefused, IOException {
    try (WorkbookPackage written = open(plan.book(), fresh)) {
      new ReadBack(plan, written).checkEntries();
      for (String edited : plan.edited().keySet()) {
        try (InputStream in = written.part(edited)) {
          SafeXml.checkWellFormed(in);
        } catch (XMLStreamException e) {
          throw failed(plan.book(), edited);
        }
      }
      if (!append.proof().holds(written)) {
        throw failed(plan.book(), "the rows");
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

  /** Compares each part with what it should be: unedited ones packed. */
  private void checkEntries() throws WorkbookRefused, IOException {
    Set<String> left = new TreeSet<>();
    written.entryNames().forEach(entry -> left.add(PartNames.key(entry)));
    for (String entry : original.entryNames()) {
      String key = PartNames.key(entry);
      if (!plan.dropped().contains(key)) {
        PackedPart edited = plan.edited().get(key);
        boolean kept =
            edited == null ? original.sameEntry(entry, written) : edited.is(written, entry);
        require(left.remove(key) && kept, entry);
      }
    }
    for (Map.Entry<String, PackedPart> part : plan.added().entrySet()) {
      String name = part.getKey();
      require(left.remove(PartNames.key(name)) && part.getValue().is(written, name), name);
    }
    require(left.isEmpty(), "list of parts");
  }

  private void checkSheets(List<OwnSheet> sheets) throws WorkbookRefused {
    for (SheetEntry sheet : written.sheets()) {
      boolean ours = sheet.partName().filter(plan.added()::containsKey).isPresent();
      require(ours || !sheet.own(), sheet.name());
    }
    List<String> theirs = Stream.concat(names(original, false), names(sheets, false)).toList();
    List<String> ours = names(sheets, true).sorted().toList();
    long different =
        written.sheets().stream().map(sheet -> OwnSheetNames.key(sheet.name())).distinct().count();
    require(
        different == written.sheets().size()
            && names(written, false).toList().equals(theirs)
            && names(written, true).sorted().toList().equals(ours),
        "list of sheets");
  }

  private static Stream<String> names(WorkbookPackage book, boolean own) {
    return book.sheets().stream().filter(sheet -> sheet.own() == own).map(SheetEntry::name);
  }

  private static Stream<String> names(List<OwnSheet> sheets, boolean marked) {
    return sheets.stream().filter(sheet -> sheet.marked() == marked).map(OwnSheet::name);
  }

  private void require(boolean kept, String where) throws WorkbookRefused {
    if (!kept) {
      throw failed(original, where);
    }
  }

  static WorkbookRefused failed(WorkbookPackage original, String where) {
    return WorkbookRefused.of(original.file(), "comparison", where);
  }
}
