package sparewell.save;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.Relationship;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.OwnParts.DefinedName;
import sparewell.save.xml.XmlEdits;

/**
 * Plans the new package: the angler's entries without those of the last run, and our new sheets.
 */
final class SavePlan {
  private static final String STYLES =
      "application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml";

  private final WorkbookPackage book;
  private final Set<String> dropped;
  private final Map<String, PackedPart> edited = new TreeMap<>();
  private final Map<String, PackedPart> added = new LinkedHashMap<>();

  private SavePlan(WorkbookPackage book, Set<String> dropped) {
    this.book = book;
    this.dropped = dropped;
  }

  static NewPackage of(OwnParts own) throws WorkbookRefused {
    SavePlan plan = new SavePlan(own.book(), new TreeSet<>(own.dropped()));
    plan.editChain();
    plan.add(own);
    return new NewPackage(own.book(), plan.dropped, plan.edited, plan.added);
  }

  /**
   * Takes our removed sheets out of the order in which formulas were last calculated.
   *
   * @see "ECMA-376 part 1, section 18.6 (calculation chain)"
   */
  private void editChain() throws WorkbookRefused {
    Set<String> sheetIds =
        book.sheets().stream()
            .filter(SheetEntry::own)
            .map(sheet -> String.valueOf(sheet.sheetId()))
            .collect(Collectors.toSet());
    for (Relationship r : book.relationships(book.workbookPart())) {
      if (r.is("calcChain") && book.has(r.part()) && !sheetIds.isEmpty()) {
        editChain(r.part(), sheetIds);
      }
    }
  }

  private void editChain(String part, Set<String> sheetIds) throws WorkbookRefused {
    XmlText xml = book.xml(part);
    XmlEdits edits = new XmlEdits(xml);
    String sheet = "0";
    boolean anyLeft = false;
    for (XmlElement entry : xml.root().children("c")) {
      sheet = entry.value("i").orElse(sheet); // an entry without has that of the entry before
      if (sheetIds.contains(sheet)) {
        edits.remove(entry);
      } else {
        anyLeft = true;
      }
    }
    if (!anyLeft) { // a workbook must not have an empty chain
      dropped.add(PartNames.key(part));
    } else if (edits.any()) {
      edit(part, edits.apply());
    }
  }

  private void add(OwnParts own) throws WorkbookRefused {
    if (book.signed()) {
      edit(PartNames.relationshipsOf(""), new RelationshipsEdit(book, "", dropped).apply());
    }
    RelationshipsEdit relationships = new RelationshipsEdit(book, book.workbookPart(), dropped);
    Map<String, String> types = new LinkedHashMap<>();
    addStyles(own.styles(), relationships, types);
    Map<String, String> ids = new TreeMap<>();
    Map<String, List<DefinedName>> names = new TreeMap<>();
    for (OwnSheet sheet : own.sheets()) {
      OwnParts.Written written = own.written(sheet);
      ids.put(sheet.name(), relationships.add("worksheet", PartNames.absolute(written.part())));
      names.put(sheet.name(), written.names());
    }
    added.putAll(own.contents());
    types.putAll(own.contentTypes());
    SheetList list = new SheetList(book.sheets(), own.sheets());
    WorkbookEdit workbook = new WorkbookEdit(book.xml(book.workbookPart()), book.sheets(), list);
    edit(book.workbookPart(), workbook.apply(ids, names, own.isRead()));
    edit(PartNames.relationshipsOf(book.workbookPart()), relationships.apply());
    XmlText contentTypes = book.xml(ContentTypesEdit.PART);
    edit(ContentTypesEdit.PART, ContentTypesEdit.apply(contentTypes, dropped, types));
  }

  private void addStyles(
      OwnStyles styles, RelationshipsEdit relationships, Map<String, String> types) {
    Optional<byte[]> grown = styles.edited();
    if (!styles.fresh()) {
      grown.ifPresent(content -> edit(book.related("styles").orElseThrow(), content));
    } else if (grown.isPresent()) {
      // The usual name where it is free: some readers look for styles by name.
      String part = book.has("xl/styles.xml") ? "xl/sparewell_styles.xml" : "xl/styles.xml";
      added.put(part, PackedPart.of(grown.get()));
      types.put(part, STYLES);
      relationships.add("styles", PartNames.absolute(part));
    }
  }

  private void edit(String part, byte[] content) {
    edited.put(PartNames.key(part), PackedPart.of(content));
  }
}
