package sparewell.save.append;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sparewell.ooxml.NewRows;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.xml.XmlEdits;

/**
 * Lets drop-down lists, conditional formats and a filter that cover a table down to its last row
 * cover the rows added below it too.
 */
final class RuleGrowth {
  private final XmlText frame;
  private final XmlEdits edits;
  private final NewRows added;

  RuleGrowth(XmlText frame, XmlEdits edits, NewRows added) {
    this.frame = frame;
    this.edits = edits;
    this.added = added;
  }

  void grow() {
    XmlElement root = frame.root();
    root.child("dataValidations")
        .map(d -> d.children("dataValidation"))
        .orElse(List.of())
        .forEach(this::growAttribute);
    root.children("conditionalFormatting").forEach(this::growAttribute);
    root.child("autoFilter")
        .ifPresent(
            filter ->
                filter
                    .value("ref")
                    .flatMap(this::grown)
                    .ifPresent(now -> edits.set(filter, "ref", now)));
    root.child("extLst").ifPresent(this::growExtension);
  }

  private void growAttribute(XmlElement rule) {
    rule.value("sqref").flatMap(this::grown).ifPresent(now -> edits.set(rule, "sqref", now));
  }

  /** Newer rules stand in extensions, their ranges as the text of an element. */
  private void growExtension(XmlElement element) {
    if (element.name().equals("sqref") && element.children().isEmpty() && !element.empty()) {
      String text = frame.text(element);
      String before = element.content();
      grown(before).ifPresent(now -> edits.replace(element, text.replace(before, now)));
    }
    element.children().forEach(this::growExtension);
  }

  /** The ranges with those that end with the table going on; absent where none does. */
  private Optional<String> grown(String ranges) {
    List<String> all = new ArrayList<>();
    boolean any = false;
    for (String range : ranges.strip().split("\\s+")) {
      Optional<Area> area = Area.of(range).filter(this::endsWithTheTable);
      any |= area.isPresent();
      all.add(area.map(a -> a.downTo(added.lastNew()).reference()).orElse(range));
    }
    return any ? Optional.of(String.join(" ", all)) : Optional.empty();
  }

  private boolean endsWithTheTable(Area area) {
    return endsWithTheTable(area, added);
  }

  /** Returns true where an area covers some of a table's columns down to its last row. */
  static boolean endsWithTheTable(Area area, NewRows added) {
    return added.lastRow() > added.headerRow()
        && area.lastRow() == added.lastRow()
        && area.firstRow() <= added.headerRow() + 1
        && area.firstColumn() <= added.lastColumn()
        && area.lastColumn() >= added.firstColumn();
  }
}
