package sparewell.save;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.Relationship;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.xml.XmlEdits;
import sparewell.save.xml.XmlOut;

/** Relationships of a part: those to parts that leave go, others come under unused ids. */
final class RelationshipsEdit {
  private static final String TYPES =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";

  private final XmlText xml;
  private final XmlEdits edits;
  private final Set<String> ids = new TreeSet<>();
  private final StringBuilder added = new StringBuilder();

  RelationshipsEdit(WorkbookPackage book, String source, Set<String> droppedKeys)
      throws WorkbookRefused {
    this.xml = book.xml(PartNames.relationshipsOf(source));
    this.edits = new XmlEdits(xml);
    List<XmlElement> listed = xml.root().children("Relationship");
    List<Relationship> known = book.relationships(source);
    for (int i = 0; i < known.size(); i++) {
      if (droppedKeys.contains(PartNames.key(known.get(i).part()))) {
        edits.remove(listed.get(i));
      } else {
        ids.add(known.get(i).id());
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
