package sparewell.save;

import java.io.IOException;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import sparewell.ooxml.NewSheets;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.Relationship;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlElement;
import sparewell.save.file.Refusals;

/**
 * Our sheets with their tables, drawings, charts and notes in their final form: under unused names,
 * with formats of the angler's styles part. Names of the last run's parts are free again.
 *
 * <p>Two threads may work at once: one takes formats and names of tables, the other writes parts.
 */
public final class OwnParts implements NewSheets {
  record Written(String part, List<DefinedName> names) {}

  private final Set<String> dropped;
  private final PartScan use;
  private final OwnStyles styles;
  private final Set<String> taken = new HashSet<>();
  private final Set<String> tableNames = new TreeSet<>();
  private final Map<String, String> contentTypes = new LinkedHashMap<>();
  private final Map<String, PackedPart> contents = new LinkedHashMap<>();
  private final Map<String, Written> sheets = new TreeMap<>();
  private int tableIds;

  private OwnParts(WorkbookPackage book, List<String> names) throws WorkbookRefused, IOException {
    dropped = LastRun.entriesToDrop(book);
    use = PartScan.of(book, dropped, names);
    styles = OwnStyles.of(book, use.highestFormat());
    for (String entry : book.entryNames()) {
      if (!dropped.contains(PartNames.key(entry))) {
        taken.add(PartNames.key(entry));
      }
    }
    takeTables(book);
  }

  /**
   * Looks at the workbook that our sheets go into.
   *
   * @param names tabs of our sheets, as {@link OwnSheetNames} gave them
   */
  public static OwnParts of(WorkbookPackage book, List<String> names) throws WorkbookRefused {
    try {
      return new OwnParts(book, names);
    } catch (IOException e) {
      throw Refusals.of(book.file(), e);
    }
  }

  /** Tables that stay, and names, which tables must not meet. */
  private void takeTables(WorkbookPackage book) throws WorkbookRefused {
    for (SheetEntry sheet : book.sheets()) {
      if (sheet.partName().isEmpty()) {
        continue;
      }
      for (Relationship r : book.relationships(sheet.partName().get())) {
        if (r.is("table") && book.has(r.part()) && !dropped.contains(PartNames.key(r.part()))) {
          XmlElement table = book.xml(r.part()).root();
          tableNames.add(table.value("displayName").orElse("").toLowerCase(Locale.ROOT));
          tableIds = Math.max(tableIds, table.number("id").orElse(0));
        }
      }
    }
    book.xml(book.workbookPart()).root().child("definedNames").stream()
        .flatMap(d -> d.children("definedName").stream())
        .forEach(n -> tableNames.add(n.value("name").orElse("").toLowerCase(Locale.ROOT)));
  }

  @Override
  public int cellFormat(CellFormat format) {
    return styles.index(format);
  }

  @Override
  public double widthFactor() {
    return styles.widthFactor();
  }

  @Override
  public String takePart(String wanted) {
    int slash = wanted.lastIndexOf('/') + 1;
    String base = wanted.substring(0, slash) + "sparewell_" + wanted.substring(slash);
    int dot = base.lastIndexOf('.');
    String name = base;
    for (int n = 2; !taken.add(PartNames.key(name)); n++) {
      name = base.substring(0, dot) + "_" + n + base.substring(dot);
    }
    return name;
  }

  @Override
  public String takeTableName(String wanted) {
    String name = wanted;
    for (int n = 2; !tableNames.add(name.toLowerCase(Locale.ROOT)); n++) {
      name = wanted + "_" + n;
    }
    return name;
  }

  @Override
  public int takeTableId() {
    return ++tableIds;
  }

  @Override
  public void write(String name, String contentType, Content content) {
    contents.put(name, PackedPart.of(content));
    if (!contentType.isEmpty()) {
      contentTypes.put(name, contentType);
    }
  }

  @Override
  public void sheet(String sheet, String part, List<DefinedName> names) {
    sheets.put(sheet, new Written(part, List.copyOf(names)));
  }

  Set<String> dropped() {
    return dropped;
  }

  /** Returns whether formulas of the angler's may read our sheets. */
  boolean isRead() {
    return use.readsOurs();
  }

  OwnStyles styles() {
    return styles;
  }

  /** Content types of the new parts; those of relationships have their usual one. */
  Map<String, String> contentTypes() {
    return contentTypes;
  }

  /** New entries, in the order in which they were written. */
  Map<String, PackedPart> contents() {
    return contents;
  }

  Written written(OwnSheet sheet) {
    Written written = sheets.get(sheet.name());
    if (written == null) {
      throw new IllegalArgumentException("no sheet of ours named " + sheet.name());
    }
    return written;
  }
}
