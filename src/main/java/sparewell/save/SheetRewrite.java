package sparewell.save;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * One of our sheets (or its tables), made to stand in another workbook: formats have the indexes of
 * the angler's styles, and the sheet is not selected.
 */
final class SheetRewrite {
  private static final List<String> DIFFERENTIAL =
      List.of(
          "dxfId",
          "dataDxfId",
          "headerRowDxfId",
          "totalsRowDxfId",
          "headerRowBorderDxfId",
          "tableBorderDxfId",
          "totalsRowBorderDxfId");

  private final StyleMerge styles;

  SheetRewrite(StyleMerge styles) {
    this.styles = styles;
  }

  /** Writes a sheet or table anew; several may be written at once. */
  void rewrite(InputStream part, Writer out) throws IOException {
    Markup in = new Markup(new InputStreamReader(part, StandardCharsets.UTF_8));
    while (in.next(out)) {
      if (in.opens("c")) {
        if ("s".equals(in.value("t"))) {
          throw new IllegalArgumentException("a text of our sheet does not stand in its cell");
        }
        format(in, "s");
      } else if (in.opens("row")) {
        format(in, "s");
      } else if (in.opens("col")) {
        format(in, "style");
        widen(in, "width");
      } else if (in.opens("sheetFormatPr")) {
        widen(in, "defaultColWidth");
      } else if (in.opens("sheetView") && in.value("tabSelected") != null) {
        in.replace("tabSelected", null);
      }
      if (in.mentions("xfId=\"")) {
        differential(in);
      }
      out.append(in.tag());
    }
  }

  private void differential(Markup in) {
    for (String attribute : DIFFERENTIAL) {
      String index = in.value(attribute);
      if (index != null) {
        in.replace(attribute, String.valueOf(styles.differentialFormat(Integer.parseInt(index))));
      }
    }
  }

  private void format(Markup in, String attribute) {
    String index = in.value(attribute);
    if (index != null) {
      in.replace(attribute, String.valueOf(styles.cellFormat(Integer.parseInt(index))));
    }
  }

  private void widen(Markup in, String attribute) {
    String width = in.value(attribute);
    if (width != null && styles.widthFactor() != 1) {
      in.replace(
          attribute,
          String.valueOf(Math.min(255, Double.parseDouble(width) * styles.widthFactor())));
    }
  }
}
