package sparewell.save;

import java.util.Map;
import java.util.Set;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.xml.XmlEdits;
import sparewell.save.xml.XmlOut;

/** Content types: overrides of parts that leave go, those of new parts come. */
final class ContentTypesEdit {
  static final String PART = "[Content_Types].xml";
  private static final String RELATIONSHIPS =
      "application/vnd.openxmlformats-package.relationships+xml";

  private ContentTypesEdit() {}

  /** Returns whether an entry is of a part that leaves, or of digital signatures. */
  static boolean leaves(XmlElement entry, Set<String> droppedKeys) {
    String part = entry.value("PartName").map(PartNames::key).orElse("");
    return droppedKeys.contains(part)
        || entry.value("ContentType").filter(t -> t.contains("digital-signature")).isPresent();
  }

  static byte[] apply(XmlText xml, Set<String> droppedKeys, Map<String, String> newParts) {
    XmlEdits edits = new XmlEdits(xml);
    boolean relationshipsKnown = false;
    for (XmlElement e : xml.root().children()) {
      if (leaves(e, droppedKeys)) {
        edits.remove(e);
      }
      relationshipsKnown |= e.value("Extension").filter("rels"::equalsIgnoreCase).isPresent();
    }
    StringBuilder added = new StringBuilder();
    if (!relationshipsKnown) {
      String tag = xml.root().qualified("Default");
      added.append(XmlOut.tag(tag, "Extension", "rels", "ContentType", RELATIONSHIPS));
    }
    String tag = xml.root().qualified("Override");
    newParts.forEach(
        (part, type) -> added.append(XmlOut.tag(tag, "PartName", "/" + part, "ContentType", type)));
    edits.append(xml.root(), added.toString());
    return edits.apply();
  }
}
