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
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** The parts of a package with their content types and relationships. */
final class Parts {
  private static final String PACKAGE = "http://schemas.openxmlformats.org/package/2006/";
  private static final String OFFICE =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";

  /** One fixed time for every entry: the same sheets give the same bytes. */
  private static final LocalDateTime ENTRY_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

  private final ByteArrayOutputStream packed = new ByteArrayOutputStream(1 << 16);
  private final ZipOutputStream zip = new ZipOutputStream(packed);
  private final Map<String, String> types = new LinkedHashMap<>();
  private final Map<String, List<Relationship>> relationships = new TreeMap<>();

  private final Map<String, Integer> numbers = new TreeMap<>();

  Parts() {
    zip.setLevel(Deflater.BEST_SPEED); // it is unpacked again at once
  }

  private record Relationship(String type, String target) {}

  /** Next number for parts of a kind, from 1. */
  int next(String kind) {
    return numbers.merge(kind, 1, Integer::sum);
  }

  /** Adds a part, such as {@code xl/styles.xml}. */
  void add(String name, String contentType, byte[] content) {
    put(name, content);
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

  /** The package as a file; nothing can be added then. */
  byte[] zip() {
    relationships.forEach((source, all) -> put(relationshipsName(source), relationships(all)));
    put("[Content_Types].xml", contentTypes());
    try {
      zip.close();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return packed.toByteArray();
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

  private void put(String name, byte[] content) {
    ZipEntry entry = new ZipEntry(name);
    entry.setTimeLocal(ENTRY_TIME);
    try {
      zip.putNextEntry(entry);
      zip.write(content);
      zip.closeEntry();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }
}
