package sparewell.save;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import javax.xml.stream.XMLStreamException;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.Relationship;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlText;

/**
 * The new package: the angler's entries as they are, less what the last run added, plus our sheets.
 */
final class Graft {
  private final WorkbookPackage book;
  private final Set<String> dropped;
  private final Map<String, PackedPart> edited = new TreeMap<>();
  private final Map<String, PackedPart> added = new LinkedHashMap<>();

  private Graft(WorkbookPackage book, Set<String> dropped) {
    this.book = book;
    this.dropped = dropped;
  }

  /** Plans the new package; nothing is written. */
  static Graft of(WorkbookPackage book, WorkbookPackage scratch, List<OwnSheet> sheets)
      throws WorkbookRefused, IOException, XMLStreamException {
    Graft graft = new Graft(book, LastRun.entriesToDrop(book));
    if (book.signed()) {
      graft.dropSignature();
    }
    graft.plan(scratch, sheets);
    return graft;
  }

  private void dropSignature() throws WorkbookRefused {
    dropped.addAll(Signature.entries(book));
    String relationships = PartNames.relationshipsOf("");
    edit(
        relationships,
        new RelationshipsEdit(book.xml(relationships), Signature.relationshipIds(book)).apply());
  }

  private void plan(WorkbookPackage scratch, List<OwnSheet> sheets)
      throws WorkbookRefused, IOException, XMLStreamException {
    XmlText ourStyles = scratch.xml(scratch.stylesPart().orElseThrow());
    boolean styled = book.stylesPart().filter(book::has).isPresent();
    StyleMerge styles =
        new StyleMerge(styled ? book.xml(book.stylesPart().get()) : ourStyles, ourStyles);
    OwnParts parts =
        new OwnParts(
            scratch, takenKeys(), new SheetRewrite(styles), OwnParts.Tables.of(book, dropped));
    RelationshipsEdit relationships =
        new RelationshipsEdit(book.xml(PartNames.relationshipsOf(book.workbookPart())), leaving());
    Map<String, String> types = new LinkedHashMap<>();
    // The usual name where it is free: some readers look for styles by name.
    String newStyles = book.has("xl/styles.xml") ? "xl/sparewell_styles.xml" : "xl/styles.xml";
    if (!styled) {
      added.put(
          newStyles, PackedPart.of(new byte[0])); // its place; its content follows from the sheets
      types.put(newStyles, scratch.contentType(scratch.stylesPart().get()).orElseThrow());
      relationships.add("styles", PartNames.absolute(newStyles));
    }
    Map<String, String> ids = new TreeMap<>();
    for (OwnSheet sheet : sheets) {
      String part = parts.carry(entry(scratch, sheet));
      ids.put(sheet.name(), relationships.add("worksheet", PartNames.absolute(part)));
    }
    added.putAll(parts.contents());
    types.putAll(parts.contentTypes());
    Optional<byte[]> grown = styles.edited();
    if (!styled) {
      added.put(
          newStyles, PackedPart.of(grown.orElseGet(() -> ourStyles.encode(ourStyles.text()))));
    } else if (grown.isPresent()) {
      edit(book.stylesPart().get(), grown.get());
    }
    editWorkbook(scratch, sheets, ids, parts.tableNames());
    edit(PartNames.relationshipsOf(book.workbookPart()), relationships.apply());
    edit(
        ContentTypesEdit.PART,
        ContentTypesEdit.apply(book.xml(ContentTypesEdit.PART), dropped, book.signed(), types));
  }

  private void editWorkbook(
      WorkbookPackage scratch,
      List<OwnSheet> sheets,
      Map<String, String> ids,
      List<String> tableNames)
      throws WorkbookRefused, IOException {
    SheetList list = new SheetList(book.sheets(), sheets);
    WorkbookEdit workbook = new WorkbookEdit(book.xml(book.workbookPart()), book.sheets(), list);
    boolean feeds = OwnFeeds.any(book, dropped, sheets, tableNames);
    edit(book.workbookPart(), workbook.apply(ids, OwnName.of(scratch), feeds));
  }

  /** Ids of the workbook's relationships to what leaves; the calculation chain is seen to here. */
  private Set<String> leaving() throws WorkbookRefused {
    Set<String> ids = new TreeSet<>();
    Set<String> sheetIds = new TreeSet<>();
    for (SheetEntry sheet : book.sheets()) {
      if (sheet.own()) {
        ids.add(sheet.relationshipId());
        sheetIds.add(String.valueOf(sheet.sheetId()));
      }
    }
    for (Relationship r : book.relationships(book.workbookPart())) {
      if (r.is("calcChain") && book.has(r.part()) && !sheetIds.isEmpty()) {
        CalculationChain chain = CalculationChain.without(book.xml(r.part()), sheetIds);
        if (!chain.anyLeft()) { // a workbook must not have an empty chain
          dropped.add(PartNames.key(r.part()));
          ids.add(r.id());
        } else if (chain.edits().any()) {
          edit(r.part(), chain.edits().apply());
        }
      }
    }
    return ids;
  }

  private void edit(String part, byte[] content) {
    edited.put(PartNames.key(part), PackedPart.of(content));
  }

  private Set<String> takenKeys() {
    Set<String> taken = new TreeSet<>();
    for (String entry : book.entryNames()) {
      if (!dropped.contains(PartNames.key(entry))) {
        taken.add(PartNames.key(entry));
      }
    }
    return taken;
  }

  private static SheetEntry entry(WorkbookPackage scratch, OwnSheet sheet) {
    return scratch.sheets().stream()
        .filter(e -> e.name().equals(sheet.name()))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no sheet of ours named " + sheet.name()));
  }

  /** Keys of the angler's entries that are not in the new package. */
  Set<String> dropped() {
    return dropped;
  }

  /** New contents of the angler's entries that are edited, by key. */
  Map<String, PackedPart> edited() {
    return edited;
  }

  /** New entries by name. */
  Map<String, PackedPart> added() {
    return added;
  }

  /** Writes the new package to a new file and to the disk under it. */
  void write(Path file) throws IOException {
    new NewPackage(book, dropped, edited, added).write(file);
  }
}
