package sparewell.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import sparewell.ooxml.NewSheets;
import sparewell.ooxml.PartNames;

/** The parts of our sheets with their relationships, as they go into the workbook. */
final class Parts {
  private static final String PACKAGE = "http://schemas.openxmlformats.org/package/2006/";
  private static final String OFFICE =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";

  private final NewSheets book;
  private final Map<String, List<Relationship>> relationships = new TreeMap<>();
  private final Map<String, Integer> numbers = new TreeMap<>();

  Parts(NewSheets book) {
    this.book = book;
  }

  private record Relationship(String type, String target) {}

  /** Takes a name for the next part of a kind, such as {@code xl/charts/chart1.xml}. */
  String take(String folder, String kind, String extension) {
    int number = numbers.merge(kind, 1, Integer::sum);
    return book.takePart("xl/" + folder + kind + number + extension);
  }

  /** Writes a part; what it refers to comes before it, and is related to it already. */
  void write(String name, String contentType, Consumer<Xml> content) {
    book.write(name, contentType, out -> new Xml(out).document(content));
    List<Relationship> all = relationships.remove(name);
    if (all != null) {
      book.write(
          PartNames.relationshipsOf(name),
          "",
          out -> new Xml(out).document(xml -> relationships(xml, all)));
    }
  }

  /**
   * Relates a part that is not yet written to another one.
   *
   * @param type last step of an office relationship type
   * @return the relationship's id
   */
  String relate(String source, String type, String target) {
    List<Relationship> all = relationships.computeIfAbsent(source, key -> new ArrayList<>());
    all.add(new Relationship(OFFICE + type, PartNames.absolute(target)));
    return "rId" + all.size();
  }

  private static void relationships(Xml xml, List<Relationship> all) {
    xml.open("Relationships xmlns='{}'", PACKAGE + "relationships");
    int number = 0;
    for (Relationship one : all) {
      number++;
      xml.leaf("Relationship Id='{}' Type='{}' Target='{}'", "rId" + number, one.type, one.target);
    }
    xml.close();
  }
}
