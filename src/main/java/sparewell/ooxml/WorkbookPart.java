package sparewell.ooxml;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import javax.xml.stream.XMLStreamException;

/** Content of the workbook part. */
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
    XmlText xml = book.xml(part);
    XmlElement root = xml.root();
    if (root.namespace().startsWith("http://purl.oclc.org/ooxml/")) {
      throw WorkbookRefused.of(book.file(), "strict");
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
    Set<Integer> marked = marked(xml, listed);
    List<SheetEntry> sheets = new ArrayList<>();
    for (int i = 0; i < listed.size(); i++) {
      sheets.add(sheet(book, listed.get(i), relationships, marked.contains(i)));
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
        e.value("state").filter(state -> !state.equals("visible")).isEmpty(),
        relationship.filter(r -> r.is("worksheet")).isPresent(),
        own,
        e.number("sheetId").orElse(0));
  }

  private static Set<Integer> marked(XmlText xml, List<XmlElement> listed) {
    Set<Integer> marked = new TreeSet<>();
    List<XmlElement> names =
        xml.root().child("definedNames").map(d -> d.children("definedName")).orElseGet(List::of);
    for (XmlElement name : names) {
      name.number("localSheetId")
          .filter(at -> at < listed.size())
          .filter(
              at ->
                  OwnMarker.marks(
                      name.value("name").orElse(""), name.content(), listed.get(at).value("name")))
          .ifPresent(marked::add);
    }
    return marked;
  }

  Optional<String> related(String kind) {
    return relationships.stream()
        .filter(r -> r.is(kind) && !r.external())
        .map(Relationship::part)
        .findFirst();
  }
}
