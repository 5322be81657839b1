package sparewell.ooxml;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import javax.xml.stream.XMLStreamException;

/**
 * What the workbook part says.
 *
 * @param name the part's name
 * @param sheets its sheets in order
 * @param relationships its relationships
 * @param date1904 whether day numbers count from 1904
 * @param structureProtected whether the sheet list is locked
 */
record WorkbookPart(
    String name,
    List<SheetEntry> sheets,
    List<Relationship> relationships,
    boolean date1904,
    boolean structureProtected) {
  private static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  private static final String RELATIONSHIPS =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

  static WorkbookPart read(WorkbookPackage book, String part)
      throws WorkbookRefused, IOException, XMLStreamException {
    XmlElement root;
    XmlText xml = book.xml(part);
    root = xml.root();
    if (root.namespace().startsWith("http://purl.oclc.org/ooxml/")) {
      throw new WorkbookRefused(
          book.file(),
          "it was saved as a 'strict' workbook",
          "Open it in your spreadsheet program and save it as an ordinary .xlsx.");
    }
    if (!root.namespace().equals(MAIN) || !root.name().equals("workbook")) {
      throw book.damaged(part);
    }
    List<Relationship> relationships = book.relationships(part);
    List<XmlElement> listed =
        root.child("sheets").map(s -> s.children("sheet")).orElseGet(List::of);
    if (listed.isEmpty()) {
      throw book.damaged(part);
    }
    Map<Integer, String> markers = markers(xml, listed);
    List<SheetEntry> sheets = new ArrayList<>();
    for (int i = 0; i < listed.size(); i++) {
      sheets.add(sheet(book, listed.get(i), relationships, markers.containsKey(i)));
    }
    return new WorkbookPart(
        part,
        List.copyOf(sheets),
        relationships,
        root.child("workbookPr").filter(p -> p.isTrue("date1904")).isPresent(),
        root.child("workbookProtection").filter(p -> p.isTrue("lockStructure")).isPresent());
  }

  private static SheetEntry sheet(
      WorkbookPackage book, XmlElement e, List<Relationship> relationships, boolean own) {
    String id = e.value(RELATIONSHIPS, "id").orElse("");
    Optional<Relationship> relationship =
        relationships.stream().filter(r -> r.id().equals(id) && !r.external()).findFirst();
    return new SheetEntry(
        e.value("name").orElse(""),
        relationship.map(Relationship::part).filter(book::has),
        Visibility.of(e.value("state").orElse("visible")),
        relationship.filter(r -> r.is("worksheet")).isPresent(),
        own,
        number(e.value("sheetId")).orElse(0),
        id);
  }

  /** Positions of the sheets that carry our marker. */
  private static Map<Integer, String> markers(XmlText xml, List<XmlElement> listed) {
    Map<Integer, String> markers = new TreeMap<>();
    List<XmlElement> names =
        xml.root().child("definedNames").map(d -> d.children("definedName")).orElseGet(List::of);
    for (XmlElement name : names) {
      Optional<Integer> position = number(name.value("localSheetId"));
      if (position.isPresent() && position.get() >= 0 && position.get() < listed.size()) {
        Optional<String> sheetName = listed.get(position.get()).value("name");
        String value = xml.content(name);
        if (OwnMarker.marks(name.value("name").orElse(""), value, sheetName)) {
          markers.put(position.get(), value);
        }
      }
    }
    return markers;
  }

  private static Optional<Integer> number(Optional<String> text) {
    return text.filter(t -> t.matches("\\d{1,9}")).map(Integer::valueOf);
  }

  Optional<String> related(String kind) {
    return relationships.stream()
        .filter(r -> r.is(kind) && !r.external())
        .map(Relationship::part)
        .findFirst();
  }
}
