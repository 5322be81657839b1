package sparewell.render;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** The parts of a package with their content types and relationships. */
final class Parts {
  private static final String PACKAGE = "http://schemas.openxmlformats.org/package/2006/";
  private static final String OFFICE =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";

  /** One fixed time for every entry: the same sheets give the same bytes. */
  private static final LocalDateTime ENTRY_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

  private final Map<String, byte[]> contents = new LinkedHashMap<>();
  private final Map<String, String> types = new LinkedHashMap<>();
  private final Map<String, List<Relationship>> relationships = new TreeMap<>();

  private final Map<String, Integer> numbers = new TreeMap<>();

  private record Relationship(String type, String target) {}

  /** Next number for parts of a kind, from 1. */
  int next(String kind) {
    return numbers.merge(kind, 1, Integer::sum);
  }

  /** Adds a part, such as {@code xl/styles.xml}. */
  void add(String name, String contentType, byte[] content) {
    contents.put(name, content);
    types.put(name, contentType);
  }

  /**
   * Relates a part to another one.
   *
   * @param source part that refers; empty for the package itself
   * @param type last step of an office relationship type, or a whole one
   * @param target absolute or relative name
   * @return the relationship's id
   */
  String relate(String source, String type, String target) {
    List<Relationship> all = relationships.computeIfAbsent(source, key -> new ArrayList<>());
    all.add(new Relationship(type.startsWith("http") ? type : OFFICE + type, target));
    return "rId" + all.size();
  }

  /** The package as a file. */
  byte[] zip() {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      put(zip, "[Content_Types].xml", contentTypes());
      for (Map.Entry<String, List<Relationship>> entry : relationships.entrySet()) {
        put(zip, relationshipsName(entry.getKey()), relationships(entry.getValue()));
      }
      for (Map.Entry<String, byte[]> entry : contents.entrySet()) {
        put(zip, entry.getKey(), entry.getValue());
      }
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return bytes.toByteArray();
  }

  private byte[] contentTypes() {
    Xml xml = new Xml().open("Types", "xmlns", PACKAGE + "content-types");
    xml.leaf(
        "Default",
        "Extension",
        "rels",
        "ContentType",
        "application/vnd.openxmlformats-package.relationships+xml");
    xml.leaf("Default", "Extension", "xml", "ContentType", "application/xml");
    xml.leaf(
        "Default",
        "Extension",
        "vml",
        "ContentType",
        "application/vnd.openxmlformats-officedocument.vmlDrawing");
    types.forEach(
        (name, type) -> {
          if (!name.endsWith(".vml")) {
            xml.leaf("Override", "PartName", "/" + name, "ContentType", type);
          }
        });
    return xml.close().bytes();
  }

  private static byte[] relationships(List<Relationship> all) {
    Xml xml = new Xml().open("Relationships", "xmlns", PACKAGE + "relationships");
    int number = 0;
    for (Relationship one : all) {
      number++;
      xml.leaf("Relationship", "Id", "rId" + number, "Type", one.type, "Target", one.target);
    }
    return xml.close().bytes();
  }

  private static String relationshipsName(String source) {
    int slash = source.lastIndexOf('/') + 1;
    return source.substring(0, slash) + "_rels/" + source.substring(slash) + ".rels";
  }

  private static void put(ZipOutputStream zip, String name, byte[] content) throws IOException {
    ZipEntry entry = new ZipEntry(name);
    entry.setTimeLocal(ENTRY_TIME);
    zip.putNextEntry(entry);
    zip.write(content);
    zip.closeEntry();
  }
}
