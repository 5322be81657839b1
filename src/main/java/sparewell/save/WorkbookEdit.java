package sparewell.save;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.ooxml.OwnMarker;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.OwnParts.DefinedName;
import sparewell.save.append.Recalculation;
import sparewell.save.xml.XmlEdits;
import sparewell.save.xml.XmlOut;

/**
 * The workbook part with our sheets in its list.
 *
 * @see "ECMA-376 part 1, section 18.2 (workbook)"
 */
final class WorkbookEdit {
  private static final String RELATIONSHIPS =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

  /** Sections before the defined names; the others follow them. */
  private static final List<String> BEFORE_NAMES =
      List.of("sheets", "functionGroups", "externalReferences");

  private final XmlElement root;
  private final XmlEdits edits;
  private final List<SheetEntry> old;
  private final SheetList list;

  WorkbookEdit(XmlText xml, List<SheetEntry> old, SheetList list) {
    this.root = xml.root();
    this.edits = new XmlEdits(xml);
    this.old = old;
    this.list = list;
  }

  /**
   * The edited part.
   *
   * @param relationshipIds the workbook's relationship to each of our sheets, by name
   * @param ownNames the defined names of each of our sheets, by sheet name
   * @param recalculate whether programs must calculate everything on opening
   */
  byte[] apply(
      Map<String, String> relationshipIds,
      Map<String, List<DefinedName>> ownNames,
      boolean recalculate) {
    sheets(relationshipIds);
    activeTabs();
    String names = newNames(ownNames);
    Optional<XmlElement> defined = root.child("definedNames");
    if (defined.isPresent()) {
      shiftNames(defined.get());
      edits.append(defined.get(), names);
    } else if (!names.isEmpty()) {
      String tag = root.qualified("definedNames");
      int at = Recalculation.behind(BEFORE_NAMES, root);
      edits.insert(at, "<" + tag + ">" + names + "</" + tag + ">");
    }
    if (recalculate) {
      Recalculation.onOpening(root, edits);
    }
    return edits.apply();
  }

  private void sheets(Map<String, String> relationshipIds) {
    XmlElement sheets = root.child("sheets").orElseThrow();
    List<XmlElement> listed = sheets.children("sheet");
    int highest = old.stream().mapToInt(SheetEntry::sheetId).max().orElse(0);
    StringBuilder pending = new StringBuilder();
    for (int i = 0; i < old.size(); i++) {
      if (list.newPosition(i).isEmpty()) {
        edits.remove(listed.get(i));
      }
    }
    for (SheetList.Tab tab : list.tabs()) {
      if (tab.own().isPresent() && tab.before().isEmpty()) {
        pending.append(tag(tab.own().get(), ++highest, "", relationshipIds));
        continue;
      }
      XmlElement there = listed.get(tab.before().orElseThrow());
      edits.insert(there.start(), pending.toString());
      pending.setLength(0);
      if (tab.own().isPresent()) {
        SheetEntry entry = old.get(tab.before().get());
        String state = there.value("state").orElse("");
        edits.replace(there, tag(tab.own().get(), entry.sheetId(), state, relationshipIds));
      }
    }
    edits.append(sheets, pending.toString());
  }

  private String tag(OwnSheet sheet, int id, String state, Map<String, String> relationshipIds) {
    List<String> attributes =
        new ArrayList<>(List.of("name", sheet.name(), "sheetId", String.valueOf(id)));
    if (!state.isEmpty()) {
      attributes.addAll(List.of("state", state));
    }
    Optional<String> prefix =
        root.attributes().stream()
            .filter(a -> a.prefix().equals("xmlns") && a.value().equals(RELATIONSHIPS))
            .map(XmlElement.Attribute::name)
            .findFirst();
    if (prefix.isEmpty()) {
      attributes.addAll(List.of("xmlns:r", RELATIONSHIPS));
    }
    attributes.addAll(List.of(prefix.orElse("r") + ":id", relationshipIds.get(sheet.name())));
    return XmlOut.tag(root.qualified("sheet"), attributes.toArray(String[]::new));
  }

  private void activeTabs() {
    Optional<XmlElement> views = root.child("bookViews");
    if (views.isEmpty()) {
      int active = list.active(0);
      String view = "<" + root.qualified("workbookView") + " activeTab=\"" + active + "\"/>";
      String tag = root.qualified("bookViews");
      edits.insert(
          root.child("sheets").orElseThrow().start(), "<" + tag + ">" + view + "</" + tag + ">");
      return;
    }
    for (XmlElement view : views.get().children("workbookView")) {
      shift(view, "activeTab");
      if (number(view, "firstSheet") > 0) { // where the list starts at its first tab it still does
        shift(view, "firstSheet");
      }
    }
  }

  private void shift(XmlElement view, String attribute) {
    int before = number(view, attribute);
    int after = list.active(before);
    if (before != after) {
      edits.set(view, attribute, String.valueOf(after));
    }
  }

  private void shiftNames(XmlElement defined) {
    for (XmlElement name : defined.children("definedName")) {
      if (name.value("localSheetId").isEmpty()) {
        continue;
      }
      int before = number(name, "localSheetId");
      Optional<Integer> after = list.newPosition(before);
      boolean own = before < old.size() && old.get(before).own();
      if (own && (after.isEmpty() || isOurs(name))) {
        edits.remove(name);
      } else if (after.isPresent() && after.get() != before) {
        edits.set(name, "localSheetId", String.valueOf(after.get()));
      }
    }
  }

  /** Returns whether a name on a sheet of ours is our marker or written with the sheet. */
  static boolean isOurs(XmlElement name) {
    String text = name.value("name").orElse("");
    return text.equalsIgnoreCase(OwnMarker.NAME) || text.startsWith("_xlnm.");
  }

  private String newNames(Map<String, List<DefinedName>> ownNames) {
    StringBuilder out = new StringBuilder();
    List<SheetList.Tab> tabs = list.tabs();
    for (int i = 0; i < tabs.size(); i++) {
      Optional<OwnSheet> own = tabs.get(i).own();
      if (own.isEmpty()) {
        continue;
      }
      for (DefinedName name : ownNames.getOrDefault(own.get().name(), List.of())) {
        out.append(name(name.name(), i, "", name.value()));
      }
      if (own.get().marked()) {
        String marker = OwnMarker.valueFor(own.get().name());
        out.append(name(OwnMarker.NAME, i, " hidden=\"1\"", marker));
      }
    }
    return out.toString();
  }

  private String name(String name, int position, String hidden, String value) {
    String tag = root.qualified("definedName");
    String attributes = " name=\"" + XmlText.escaped(name) + "\" localSheetId=\"" + position + "\"";
    return "<" + tag + attributes + hidden + ">" + XmlText.escaped(value) + "</" + tag + ">";
  }

  private static int number(XmlElement element, String attribute) {
    return element.number(attribute).orElse(0);
  }
}
