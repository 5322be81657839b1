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
  private final NewSheets book;
  private final Map<String, List<String>> relationships = new TreeMap<>();
  private final Map<String, Integer> numbers = new TreeMap<>();

  Parts(NewSheets book) {
    this.book = book;
  }

  /** Takes a name for the next part of a kind, such as {@code xl/charts/chart1.xml}. */
  String take(String folder, String kind, String extension) {
    int number = numbers.merge(kind, 1, Integer::sum);
    return book.takePart("xl/" + folder + kind + number + extension);
  }

  /** Writes a part; what it refers to comes before it, and is related to it already. */
  void write(String name, String contentType, Consumer<Xml> content) {
    book.write(name, contentType, out -> document(new Xml(out), content));
    List<String> all = relationships.remove(name);
    if (all != null) {
      String whole = String.join("", all);
      book.write(
          PartNames.relationshipsOf(name),
          "",
          out -> document(new Xml(out), xml -> xml.add("relationships", whole)));
    }
  }

  private static void document(Xml xml, Consumer<Xml> content) {
    xml.add("document");
    content.accept(xml);
    xml.pass();
  }

  /**
   * Relates a part that is not yet written to another one.
   *
   * @param type last step of an office relationship type
   * @return the relationship's id
   */
  String relate(String source, String type, String target) {
    List<String> all = relationships.computeIfAbsent(source, key -> new ArrayList<>());
    int number = all.size() + 1;
    all.add(Xml.filled("relationship", number, type, PartNames.absolute(target)));
    return "rId" + number;
  }
}
