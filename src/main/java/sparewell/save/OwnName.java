package sparewell.save;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.xml.XmlOut;

/**
 * A defined name of one of our sheets, such as its print area.
 *
 * @param name the name
 * @param value what it stands for, as formula text
 * @param hidden whether lists of names leave it out
 */
record OwnName(String name, String value, boolean hidden) {
  /** As an element for the sheet at a position. */
  String tag(String element, int position) {
    return "<"
        + element
        + " name=\""
        + XmlOut.attribute(name)
        + "\" localSheetId=\""
        + position
        + "\""
        + (hidden ? " hidden=\"1\"" : "")
        + ">"
        + XmlOut.text(value)
        + "</"
        + element
        + ">";
  }

  /** The names of the scratch workbook's sheets, by sheet. */
  static Map<String, List<OwnName>> of(WorkbookPackage scratch) throws WorkbookRefused {
    XmlText xml = scratch.xml(scratch.workbookPart());
    Map<String, List<OwnName>> names = new TreeMap<>();
    List<XmlElement> defined =
        xml.root().child("definedNames").map(d -> d.children("definedName")).orElseGet(List::of);
    for (XmlElement e : defined) {
      int position =
          e.value("localSheetId")
              .map(Integer::valueOf)
              .orElseThrow(
                  () -> new IllegalArgumentException("our sheets must not define workbook names"));
      SheetEntry sheet = scratch.sheets().get(position);
      names
          .computeIfAbsent(sheet.name(), n -> new ArrayList<>())
          .add(new OwnName(e.value("name").orElseThrow(), xml.content(e), e.isTrue("hidden")));
    }
    return names;
  }
}
