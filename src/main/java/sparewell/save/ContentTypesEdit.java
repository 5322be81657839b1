package sparewell.save;

import java.util.Map;
import java.util.Set;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.xml.XmlEdits;
import sparewell.save.xml.XmlOut;

/**
 * The package's content types: overrides of parts that leave are removed, those of new parts added.
 */
final class ContentTypesEdit {
  static final String PART = "[Content_Types].xml";
  private static final String RELATIONSHIPS =
      "application/vnd.openxmlformats-package.relationships+xml";

  private ContentTypesEdit() {}

  static byte[] apply(
      XmlText xml, Set<String> droppedKeys, boolean unsigned, Map<String, String> newParts) {
    XmlEdits edits = new XmlEdits(xml);
    boolean relationshipsKnown = false;
    for (XmlElement e : xml.root().children()) {
      String part = e.value("PartName").map(PartNames::key).orElse("");
      if (droppedKeys.contains(part) || unsigned && Signature.concerns(e)) {
        edits.remove(e);
      }
      relationshipsKnown |= e.value("Extension").filter("rels"::equalsIgnoreCase).isPresent();
    }
    StringBuilder added = new StringBuilder();
    if (!relationshipsKnown) {
      String tag = xml.root().qualified("Default");
      added.append(XmlOut.tag(tag, "Extension", "rels", "ContentType", RELATIONSHIPS));
    }
    String override = xml.root().qualified("Override");
    newParts.forEach(
        (part, type) ->
            added.append(
                XmlOut.tag(override, "PartName", PartNames.absolute(part), "ContentType", type)));
    edits.append(xml.root(), added.toString());
    return edits.apply();
  }
}
