package sparewell.save;

import java.util.Set;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.xml.XmlEdits;

/**
 * The order in which formulas were last calculated. Entries of our removed sheets leave it.
 *
 * @see "ECMA-376 part 1, section 18.6 (calculation chain): an entry without sheet id has that of
 *     the entry before"
 */
record CalculationChain(XmlEdits edits, boolean anyLeft) {

  /** The part without entries of some sheets. */
  static CalculationChain without(XmlText xml, Set<String> sheetIds) {
    XmlEdits edits = new XmlEdits(xml);
    String current = "0";
    boolean previousRemoved = false;
    boolean anyLeft = false;
    for (XmlElement entry : xml.root().children("c")) {
      current = entry.value("i").orElse(current);
      boolean remove = sheetIds.contains(current);
      if (remove) {
        edits.remove(entry);
      } else {
        anyLeft = true;
        if (previousRemoved && entry.value("i").isEmpty()) {
          edits.set(entry, "i", current);
        }
      }
      previousRemoved = remove;
    }
    return new CalculationChain(edits, anyLeft);
  }
}
