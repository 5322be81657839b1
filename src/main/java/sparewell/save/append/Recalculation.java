package sparewell.save.append;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import sparewell.ooxml.NewRows;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;
import sparewell.save.xml.XmlEdits;

/**
 * Edits of the workbook part for new rows: spreadsheet programs are to calculate everything when
 * they open it, and the hidden name of a filter's range grows with the filter.
 *
 * @see "ECMA-376 part 1, sections 18.2.2 (calcPr) and 18.2.6 (definedNames)"
 */
public final class Recalculation {
  static final Pattern FORMULA = Pattern.compile("<(?:[\\w.-]+:)?f[\\s>/]");
  private static final int OVERLAP = 100;

  private static final List<String> BEFORE =
      List.of("sheets", "functionGroups", "externalReferences", "definedNames");

  private Recalculation() {}

  /** The edited workbook part; absent where nothing is to be edited. */
  static Optional<byte[]> asked(WorkbookPackage book, List<NewRows> sheets)
      throws WorkbookRefused, IOException {
    XmlText xml = book.xml(book.workbookPart());
    XmlEdits edits = new XmlEdits(xml);
    if (anyFormula(book)) {
      onOpening(xml.root(), edits);
    }
    for (XmlElement name :
        xml.root().child("definedNames").map(n -> n.children("definedName")).orElse(List.of())) {
      if (name.value("name").filter("_xlnm._FilterDatabase"::equals).isPresent()) {
        sheets.forEach(added -> growFilter(xml, name, added, edits));
      }
    }
    return edits.any() ? Optional.of(edits.apply()) : Optional.empty();
  }

  private static void growFilter(XmlText xml, XmlElement name, NewRows added, XmlEdits edits) {
    String range = name.content();
    int mark = range.lastIndexOf('!');
    String sheet = range.substring(0, Math.max(0, mark)).replaceAll("^'|'$", "").replace("''", "'");
    if (sheet.equals(added.sheet().name())
        && Area.of(range.substring(mark + 1))
            .filter(area -> RuleGrowth.endsWithTheTable(area, added))
            .isPresent()) {
      edits.replace(
          name, xml.text(name).replaceFirst("\\d+(?=\\s*</)", String.valueOf(added.lastNew())));
    }
  }

  /** Asks for a calculation on opening; the section for it comes behind others just inserted. */
  public static void onOpening(XmlElement root, XmlEdits edits) {
    Optional<XmlElement> calculation = root.child("calcPr");
    if (calculation.isPresent()) {
      edits.set(calculation.get(), "fullCalcOnLoad", "1");
    } else {
      edits.insert(
          behind(BEFORE, root), "<" + root.qualified("calcPr") + " fullCalcOnLoad=\"1\"/>");
    }
  }

  /** End of the last of some sections of the workbook part. */
  public static int behind(List<String> sections, XmlElement root) {
    int at = 0;
    for (XmlElement child : root.children()) {
      at = sections.contains(child.name()) ? child.end() : at;
    }
    return at;
  }

  private static boolean anyFormula(WorkbookPackage book) throws IOException {
    for (SheetEntry sheet : book.sheets()) {
      if (!sheet.own() && sheet.worksheet() && sheet.partName().isPresent()) {
        if (book.anyStretch(
            sheet.partName().get(), OVERLAP, text -> FORMULA.matcher(text).find())) {
          return true;
        }
      }
    }
    return false;
  }
}
