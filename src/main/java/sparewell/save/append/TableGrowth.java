package sparewell.save.append;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import sparewell.ooxml.NewRows;
import sparewell.ooxml.Relationship;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.xml.XmlEdits;

/**
 * The tables (list objects) of a sheet that gets more rows: the one whose header is that of the
 * rows grows over them, another must not be in the way.
 *
 * @see "ECMA-376 part 1, section 18.5.1 (tables)"
 */
final class TableGrowth {
  private TableGrowth() {}

  /** New contents of the sheet's table parts, by part; those that stay are not in it. */
  static Map<String, byte[]> of(WorkbookPackage book, NewRows added) throws WorkbookRefused {
    Map<String, byte[]> grown = new TreeMap<>();
    for (Relationship r : book.relationships(added.sheet().partName().orElseThrow())) {
      if (r.is("table") && !r.external() && book.has(r.part())) {
        grow(book, added, r.part()).ifPresent(content -> grown.put(r.part(), content));
      }
    }
    return grown;
  }

  private static Optional<byte[]> grow(WorkbookPackage book, NewRows added, String part)
      throws WorkbookRefused {
    XmlText xml = book.xml(part);
    XmlElement table = xml.root();
    Optional<Area> found = table.value("ref").flatMap(Area::of);
    if (found.isEmpty()) {
      return Optional.empty();
    }
    Area area = found.get();
    Area header =
        new Area(added.headerRow(), added.firstColumn(), added.headerRow(), added.lastColumn());
    Area room =
        new Area(added.firstNew(), added.firstColumn(), added.lastNew(), added.lastColumn());
    String name = table.value("displayName").orElse("");
    if (!area.meets(header)) {
      if (area.meets(room)) {
        throw WorkbookRefused.of(book.file(), "table below", added.sheet().name(), name);
      }
      return Optional.empty();
    }
    boolean totals = table.value("totalsRowCount").filter(c -> !c.equals("0")).isPresent();
    if (totals && area.lastRow() >= added.lastRow()) {
      throw WorkbookRefused.of(book.file(), "totals row", added.sheet().name());
    }
    if (added.lastRow() > area.lastRow() || added.lastNew() <= area.lastRow()) {
      return Optional.empty(); // rows were typed below it, or it has room
    }
    XmlEdits edits = new XmlEdits(xml);
    edits.set(table, "ref", area.downTo(added.lastNew()).reference());
    Optional<XmlElement> filter = table.child("autoFilter");
    filter
        .flatMap(f -> f.value("ref"))
        .flatMap(Area::of)
        .ifPresent(f -> edits.set(filter.get(), "ref", f.downTo(added.lastNew()).reference()));
    return Optional.of(edits.apply());
  }
}
