package sparewell.save;

import java.util.Set;
import java.util.TreeSet;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.Relationship;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlElement;

/**
 * A package's digital signature: what must leave, because no signature outlasts a change.
 *
 * @see "ECMA-376 part 2, section 10 (digital signatures)"
 */
final class Signature {
  private static final String RELATIONSHIP = "/digital-signature/";

  private Signature() {}

  /** Keys of its entries: origin, signatures, certificates, and their relationships. */
  static Set<String> entries(WorkbookPackage book) throws WorkbookRefused {
    Set<String> entries = new TreeSet<>();
    collect(book, "", entries);
    return entries;
  }

  private static void collect(WorkbookPackage book, String source, Set<String> entries)
      throws WorkbookRefused {
    for (Relationship r : book.relationships(source)) {
      if (isSignature(r.type()) && !r.external() && entries.add(PartNames.key(r.part()))) {
        collect(book, r.part(), entries);
        String relationships = PartNames.relationshipsOf(r.part());
        if (book.has(relationships)) {
          entries.add(PartNames.key(relationships));
        }
      }
    }
  }

  private static boolean isSignature(String relationshipType) {
    return relationshipType.contains(RELATIONSHIP);
  }

  /** Returns whether an entry of relationships or content types speaks of a signature only. */
  static boolean concerns(XmlElement entry) {
    return entry.value("Type").filter(Signature::isSignature).isPresent()
        || entry.value("ContentType").filter(t -> t.contains("package.digital-sig")).isPresent();
  }

  static Set<String> relationshipIds(WorkbookPackage book) throws WorkbookRefused {
    Set<String> ids = new TreeSet<>();
    for (Relationship r : book.relationships("")) {
      if (isSignature(r.type())) {
        ids.add(r.id());
      }
    }
    return ids;
  }
}
