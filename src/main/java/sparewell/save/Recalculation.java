package sparewell.save;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.XmlElement;
import sparewell.ooxml.XmlText;

/** Asks spreadsheet programs to calculate everything when they open a workbook with new rows. */
final class Recalculation {
  private static final Pattern FORMULA = Pattern.compile("<(?:[\\w.-]+:)?f[\\s>/]");
  private static final int OVERLAP = 100;

  /** What stands before the settings of calculation. */
  private static final List<String> BEFORE =
      List.of("sheets", "functionGroups", "externalReferences", "definedNames");

  private Recalculation() {}

  /** The workbook part that asks for it; absent where no sheet of the angler's has a formula. */
  static Optional<byte[]> asked(WorkbookPackage book) throws WorkbookRefused, IOException {
    return anyFormula(book) ? Optional.of(edited(book.xml(book.workbookPart()))) : Optional.empty();
  }

  private static byte[] edited(XmlText xml) {
    XmlElement root = xml.root();
    XmlEdits edits = new XmlEdits(xml);
    Optional<XmlElement> calculation = root.child("calcPr");
    if (calculation.isPresent()) {
      edits.set(calculation.get(), "fullCalcOnLoad", "1");
    } else {
      int at = 0;
      for (XmlElement child : root.children()) {
        at = BEFORE.contains(child.name()) ? child.end() : at;
      }
      edits.insert(at, "<" + root.qualified("calcPr") + " fullCalcOnLoad=\"1\"/>");
    }
    return edits.apply();
  }

  private static boolean anyFormula(WorkbookPackage book) throws IOException {
    for (SheetEntry sheet : book.sheets()) {
      if (!sheet.own() && sheet.worksheet() && sheet.partName().isPresent()) {
        byte[] buffer = new byte[1 << 18];
        String rest = "";
        try (InputStream in = book.part(sheet.partName().get())) {
          for (int n = in.readNBytes(buffer, 0, buffer.length);
              n > 0;
              n = in.readNBytes(buffer, 0, buffer.length)) {
            String text =
                rest + new String(buffer, 0, n, StandardCharsets.ISO_8859_1).replace("\0", "");
            if (FORMULA.matcher(text).find()) {
              return true;
            }
            rest = text.substring(Math.max(0, text.length() - OVERLAP));
          }
        }
      }
    }
    return false;
  }
}
