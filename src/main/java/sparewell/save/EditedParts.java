package sparewell.save;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.Relationship;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.xml.XmlOut;

/**
 * Compares edited parts before and after without our additions: nothing of the angler's may differ.
 */
final class EditedParts {
  private static final Set<String> TAB_POSITIONS = Set.of("activeTab", "firstSheet");

  private EditedParts() {}

  static void check(WorkbookPackage before, WorkbookPackage after, NewPackage plan)
      throws WorkbookRefused {
    for (String key : plan.edited().keySet()) {
      String part = before.entryName(key).orElseThrow();
      XmlText old = before.xml(part);
      XmlText now = after.xml(part);
      boolean kept =
          switch (old.root().name()) {
            case "workbook" -> workbook(before, old, plan).equals(workbook(after, now, plan));
            case "styleSheet" -> grownOnly(old, now);
            case "calcChain" -> chain(before, old).equals(chain(after, now));
            default -> containsAll(before, plan, part, old, now);
          };
      if (!kept) {
        throw ReadBack.failed(before, part);
      }
    }
  }

  /** The workbook part with positions of tabs spelled as names, and without the sheets we add. */
  private static List<String> workbook(WorkbookPackage book, XmlText xml, NewPackage plan) {
    List<SheetEntry> sheets = book.sheets();
    List<Boolean> added =
        sheets.stream()
            .map(s -> s.own() || s.partName().filter(plan.added()::containsKey).isPresent())
            .toList();
    List<String> all = new ArrayList<>();
    for (XmlElement section : xml.root().children()) {
      switch (section.name()) {
        case "sheets" -> {
          List<XmlElement> listed = section.children("sheet");
          for (int i = 0; i < listed.size(); i++) {
            if (!added.get(i)) {
              all.add(XmlOut.canonical(listed.get(i)));
            }
          }
        }
        case "definedNames" ->
            section.children("definedName").forEach(n -> name(sheets, added, xml, n, all));
        case "bookViews" ->
            section.children("workbookView").forEach(v -> addWithout(TAB_POSITIONS, v, all));
        case "calcPr" -> addWithout(Set.of("fullCalcOnLoad"), section, all);
        default -> all.add(xml.text(section));
      }
    }
    return all;
  }

  /** Adds an element without some attributes, unless it has no others. */
  private static void addWithout(Set<String> ignored, XmlElement element, List<String> all) {
    if (element.attributes().stream().anyMatch(a -> !ignored.contains(a.name()))) {
      Map<String, String> without =
          ignored.stream().collect(Collectors.toMap(name -> name, name -> ""));
      all.add(XmlOut.canonical(element, without));
    }
  }

  private static void name(
      List<SheetEntry> sheets,
      List<Boolean> added,
      XmlText xml,
      XmlElement name,
      List<String> all) {
    int position = name.number("localSheetId").orElse(-1);
    Map<String, String> changed = new TreeMap<>();
    if (position >= 0 && position < sheets.size()) {
      if (added.get(position)) {
        return;
      }
      changed.put("localSheetId", sheets.get(position).name());
    }
    all.add(XmlOut.canonical(name, changed) + name.content());
  }

  /** Returns whether every list begins with what it held, to the letter. */
  private static boolean grownOnly(XmlText old, XmlText now) {
    return old.root().children().stream()
        .allMatch(
            list ->
                now.root().children().stream()
                    .filter(c -> c.name().equals(list.name()))
                    .filter(c -> c.namespace().equals(list.namespace()))
                    .anyMatch(c -> beginsWith(texts(now, c), texts(old, list))));
  }

  private static boolean beginsWith(List<String> all, List<String> first) {
    return all.size() >= first.size() && all.subList(0, first.size()).equals(first);
  }

  private static List<String> texts(XmlText xml, XmlElement list) {
    return list.children().stream().map(xml::text).toList();
  }

  /** The cells of sheets that are not ours, each with the sheet that it may take from before it. */
  private static List<String> chain(WorkbookPackage book, XmlText xml) {
    Set<String> ownIds =
        book.sheets().stream()
            .filter(SheetEntry::own)
            .map(sheet -> String.valueOf(sheet.sheetId()))
            .collect(Collectors.toSet());
    List<String> all = new ArrayList<>();
    String sheetId = "";
    for (XmlElement cell : xml.root().children()) {
      sheetId = cell.value("i").orElse(sheetId);
      if (!ownIds.contains(sheetId)) {
        all.add(XmlOut.canonical(cell, Map.of("i", sheetId)));
      }
    }
    return all;
  }

  /** Returns whether every entry is still there, other than those of parts that left. */
  private static boolean containsAll(
      WorkbookPackage book, NewPackage plan, String part, XmlText old, XmlText now)
      throws WorkbookRefused {
    Set<String> after = new HashSet<>();
    now.root().children().forEach(entry -> after.add(XmlOut.canonical(entry)));
    Set<String> left = new HashSet<>();
    if (PartNames.isRelationships(part)) {
      for (Relationship r : book.relationships(PartNames.sourceOf(part))) {
        if (plan.dropped().contains(PartNames.key(r.part()))) {
          left.add(r.id());
        }
      }
    }
    return old.root().children().stream()
        .filter(entry -> !ContentTypesEdit.leaves(entry, plan.dropped()))
        .filter(entry -> entry.value("Id").filter(left::contains).isEmpty())
        .allMatch(entry -> after.contains(XmlOut.canonical(entry)));
  }
}
