package sparewell.save;

import java.io.IOException;
import java.io.OutputStream;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.Relationship;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlElement;
import sparewell.save.file.Refusals;

/**
 * Our sheets with their tables, drawings, charts and notes, written for one workbook: under unused
 * names, with formats of the angler's styles part. Names of the last run's parts are free again.
 * Parts are packed while they are written.
 *
 * <p>Two threads may work at once: one takes formats and names of tables, the other writes parts.
 */
public final class OwnParts {
  private final WorkbookPackage book;
  private final List<OwnSheet> sheets;
  private final Set<String> dropped;
  private final PartScan use;
  private final OwnStyles styles;
  private final Set<String> taken = new HashSet<>();
  private final Set<String> tableNames = new TreeSet<>();
  private final Map<String, String> contentTypes = new LinkedHashMap<>();
  private final Map<String, PackedPart> contents = new LinkedHashMap<>();
  private final Map<String, Written> written = new TreeMap<>();
  private int tableIds;

  private OwnParts(WorkbookPackage book, List<OwnSheet> sheets)
      throws WorkbookRefused, IOException {
    this.book = book;
    this.sheets = List.copyOf(sheets);
    dropped = LeavingParts.entries(book);
    use = PartScan.of(book, dropped, sheets.stream().map(OwnSheet::name).toList());
    styles = OwnStyles.of(book, use.highestFormat());
    for (String entry : book.entryNames()) {
      if (!dropped.contains(PartNames.key(entry))) {
        taken.add(PartNames.key(entry));
      }
    }
    takeTables();
  }

  /** A part of ours; it is written without closing the stream. */
  @FunctionalInterface
  public interface Content {
    void write(OutputStream out) throws IOException;
  }

  /**
   * A cell format; elements are in the main namespace, without prefixes, their attributes in the
   * order of their names.
   *
   * @param builtIn number of the pattern in the file format; negative where it has none
   * @param inside elements of alignment and protection
   */
  public record CellFormat(
      String pattern, int builtIn, String font, String fill, String border, String inside) {}

  /** A name of one sheet, and the formula text that it stands for. */
  public record DefinedName(String name, String value) {}

  record Written(String part, List<DefinedName> names) {}

  /** Looks at the workbook that our sheets go into. */
  public static OwnParts of(WorkbookPackage book, List<OwnSheet> sheets) throws WorkbookRefused {
    try {
      return new OwnParts(book, sheets);
    } catch (IOException e) {
      throw Refusals.of(book.file(), e);
    }
  }

  /** Tables that stay, and names, which tables must not meet. */
  private void takeTables() throws WorkbookRefused {
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

  /** Index of a cell format; equal formats have one index. */
  public int cellFormat(CellFormat format) {
    return styles.index(format);
  }

  /** Factor from column widths of 7 pixels a digit to widths in the workbook's font, no unit. */
  public double widthFactor() {
    return styles.widthFactor();
  }

  /** Takes a free name for a part, such as {@code xl/charts/sparewell_chart1.xml}. */
  public String takePart(String folder, String kind, String extension) {
    String name;
    int number = 0;
    do {
      name = "xl/" + folder + "sparewell_" + kind + ++number + extension;
    } while (!taken.add(PartNames.key(name)));
    return name;
  }

  /**
   * Takes a free name for a table: the wanted one where no table or name of the angler's has it.
   */
  public String takeTableName(String wanted) {
    String name = wanted;
    for (int n = 2; !tableNames.add(name.toLowerCase(Locale.ROOT)); n++) {
      name = wanted + "_" + n;
    }
    return name;
  }

  public int takeTableId() {
    return ++tableIds;
  }

  /**
   * Writes a part, packed while it is made.
   *
   * @param name as taken, or the name of the relationships of a part so taken
   * @param contentType empty for relationships, which have their usual one
   */
  public void write(String name, String contentType, Content content) {
    contents.put(name, PackedPart.of(content));
    if (!contentType.isEmpty()) {
      contentTypes.put(name, contentType);
    }
  }

  /** Registers a sheet of ours with its own defined names, such as its print area. */
  public void sheet(String sheet, String part, List<DefinedName> names) {
    written.put(sheet, new Written(part, List.copyOf(names)));
  }

  WorkbookPackage book() {
    return book;
  }

  List<OwnSheet> sheets() {
    return sheets;
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

  /** What was written of a sheet. */
  Written written(OwnSheet sheet) {
    return Objects.requireNonNull(written.get(sheet.name()), sheet.name());
  }
}
