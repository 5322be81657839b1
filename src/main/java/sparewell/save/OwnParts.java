package sparewell.save;

import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ForkJoinTask;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.xml.stream.XMLStreamException;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.Relationship;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.xml.XmlEdits;

/** Our sheets with their tables, drawings, charts and notes, under names that nobody uses. */
final class OwnParts {
  private final WorkbookPackage scratch;
  private final Set<String> taken = new HashSet<>();
  private final SheetRewrite rewrite;
  private final Tables tables;
  private final Map<String, String> newNames = new LinkedHashMap<>();
  private final Map<String, String> contentTypes = new LinkedHashMap<>();
  private final Map<String, PackedPart> contents = new LinkedHashMap<>();
  private final Map<String, String> sheets = new LinkedHashMap<>(); // part in scratch by new name

  OwnParts(WorkbookPackage scratch, Set<String> takenKeys, SheetRewrite rewrite, Tables tables) {
    this.scratch = scratch;
    this.taken.addAll(takenKeys);
    this.rewrite = rewrite;
    this.tables = tables;
  }

  /** Takes one of our sheets with all it needs; gives the new name of its part. */
  String carry(SheetEntry sheet) throws WorkbookRefused, IOException, XMLStreamException {
    String part = sheet.partName().orElseThrow();
    String name = newName(part);
    contents.put(name, null); // its place; sheets are written together, see contents()
    sheets.put(name, part);
    carryRelated(part, name);
    return name;
  }

  private PackedPart sheet(String part) {
    try (InputStream in = scratch.part(part)) {
      return PackedPart.ofText(out -> rewrite.rewrite(in, out));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void carryRelated(String part, String name)
      throws WorkbookRefused, IOException, XMLStreamException {
    List<Relationship> relationships = scratch.relationships(part);
    if (relationships.isEmpty()) {
      return;
    }
    StringBuilder out =
        new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n")
            .append("<Relationships xmlns=\"" + RelationshipsEdit.NAMESPACE + "\">");
    for (Relationship r : relationships) {
      boolean outside = r.external() || !scratch.has(r.part());
      String target = outside ? r.target() : PartNames.absolute(carryPart(r));
      out.append(
          RelationshipsEdit.tag(
              "Relationship", r.id(), r.type(), target, outside && !r.target().startsWith("#")));
    }
    contents.put(
        PartNames.relationshipsOf(name),
        PackedPart.of(out.append("</Relationships>").toString().getBytes(StandardCharsets.UTF_8)));
  }

  private String carryPart(Relationship r) throws WorkbookRefused, IOException, XMLStreamException {
    String known = newNames.get(r.part());
    if (known != null) {
      return known;
    }
    String name = newName(r.part());
    try (InputStream in = scratch.part(r.part())) {
      contents.put(name, PackedPart.of(r.is("table") ? table(in) : in.readAllBytes()));
    }
    carryRelated(r.part(), name);
    return name;
  }

  private byte[] table(InputStream in) throws IOException, XMLStreamException {
    StringWriter out = new StringWriter();
    rewrite.rewrite(in, out);
    return tables.renumber(out.toString().getBytes(StandardCharsets.UTF_8));
  }

  private String newName(String part) {
    int slash = part.lastIndexOf('/');
    String base = part.substring(0, slash + 1) + "sparewell_" + part.substring(slash + 1);
    int dot = base.lastIndexOf('.');
    String name = base;
    for (int n = 2; !taken.add(PartNames.key(name)); n++) {
      name = base.substring(0, dot) + "_" + n + base.substring(dot);
    }
    newNames.put(part, name);
    contentTypes.put(name, scratch.contentType(part).orElseThrow());
    return name;
  }

  /** Content types of the new parts; those of relationships have their usual one. */
  Map<String, String> contentTypes() {
    return contentTypes;
  }

  /** New entries, in order. The sheets, most of the work, are written side by side. */
  Map<String, PackedPart> contents() throws IOException {
    try {
      Stream<Map.Entry<String, String>> all = sheets.entrySet().stream();
      // Where several workbooks are analysed at once, the cores are busy with those.
      Map<String, PackedPart> written =
          (ForkJoinTask.inForkJoinPool() ? all : all.parallel())
              .collect(Collectors.toMap(Map.Entry::getKey, sheet -> sheet(sheet.getValue())));
      contents.replaceAll((name, part) -> part == null ? written.get(name) : part);
      return contents;
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  /** Names of the tables of our sheets. */
  List<String> tableNames() {
    return List.copyOf(tables.ours);
  }

  /** Ids and names of tables, which must be new in the whole workbook. */
  static final class Tables {
    private final Set<String> names = new TreeSet<>();
    private final List<String> ours = new ArrayList<>();
    private int highest;

    /** Looks at the tables that stay. */
    static Tables of(WorkbookPackage book, Set<String> dropped) throws WorkbookRefused {
      Tables tables = new Tables();
      for (SheetEntry sheet : book.sheets()) {
        if (sheet.partName().isEmpty()) {
          continue;
        }
        for (Relationship r : book.relationships(sheet.partName().get())) {
          if (r.is("table") && book.has(r.part()) && !dropped.contains(PartNames.key(r.part()))) {
            XmlElement table = book.xml(r.part()).root();
            tables.names.add(table.value("displayName").orElse("").toLowerCase(Locale.ROOT));
            table
                .value("id")
                .filter(v -> v.matches("\\d{1,9}"))
                .ifPresent(v -> tables.highest = Math.max(tables.highest, Integer.parseInt(v)));
          }
        }
      }
      book.xml(book.workbookPart()).root().child("definedNames").stream()
          .flatMap(d -> d.children("definedName").stream())
          .forEach(n -> tables.names.add(n.value("name").orElse("").toLowerCase(Locale.ROOT)));
      return tables;
    }

    byte[] renumber(byte[] table) throws XMLStreamException {
      XmlText xml = XmlText.parse(table);
      XmlEdits edits = new XmlEdits(xml);
      String wanted = xml.root().value("displayName").orElseThrow();
      String name = wanted;
      for (int n = 2; !names.add(name.toLowerCase(Locale.ROOT)); n++) {
        name = wanted + "_" + n;
      }
      ours.add(name);
      edits.set(xml.root(), "id", String.valueOf(++highest));
      edits.set(xml.root(), "name", name);
      edits.set(xml.root(), "displayName", name);
      return edits.apply();
    }
  }
}
