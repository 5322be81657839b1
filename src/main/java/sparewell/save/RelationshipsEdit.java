package sparewell.save;

import java.util.Set;
import java.util.TreeSet;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.xml.XmlEdits;
import sparewell.save.xml.XmlOut;

/** The workbook's relationships: some removed, some added under unused ids. */
final class RelationshipsEdit {

  private static final String TYPES =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";

  private final XmlText xml;
  private final XmlEdits edits;
  private final Set<String> ids = new TreeSet<>();
  private final StringBuilder added = new StringBuilder();

  RelationshipsEdit(XmlText xml, Set<String> removedIds) {
    this.xml = xml;
    this.edits = new XmlEdits(xml);
    for (XmlElement e : xml.root().children("Relationship")) {
      String id = e.value("Id").orElse("");
      if (removedIds.contains(id)) {
        edits.remove(e);
      } else {
        ids.add(id);
      }
    }
  }

  /** Adds a relationship of an office kind; gives its id. */
  String add(String kind, String absoluteTarget) {
    int n = 1;
    while (!ids.add("rId" + n)) {
      n++;
    }
    String id = "rId" + n;
    String tag = xml.root().qualified("Relationship");
    added.append(XmlOut.tag(tag, "Id", id, "Type", TYPES + kind, "Target", absoluteTarget));
    return id;
  }

  byte[] apply() {
    edits.append(xml.root(), added.toString());
    return edits.apply();
  }
}
