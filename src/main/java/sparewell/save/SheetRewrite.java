package sparewell.save;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.StringWriter;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * One of our sheets (or its tables), made to stand in another workbook: texts stand in their cells,
 * formats have the indexes of the angler's styles, and the sheet is not selected.
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
  private final List<String> strings;
  private final int daysLater;

  /**
   * A rewriter.
   *
   * @param daysLater what is added to day numbers: our scratch workbook and the angler's may count
   *     days from different dates
   */
  SheetRewrite(StyleMerge styles, List<String> strings, int daysLater) {
    this.styles = styles;
    this.strings = strings;
    this.daysLater = daysLater;
  }

  /** Writes a sheet or table anew; several may be written at once. */
  void rewrite(InputStream part, Writer out) throws IOException {
    Markup in = new Markup(new InputStreamReader(part, StandardCharsets.UTF_8));
    while (in.next(out)) {
      if (in.opens("c")) {
        cell(in, out);
        continue;
      }
      if (in.opens("row")) {
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

  private void cell(Markup in, Writer out) throws IOException {
    boolean shared = "s".equals(in.value("t"));
    boolean day = daysLater != 0 && isDay(in);
    if (shared) {
      in.replace("t", "inlineStr");
    }
    format(in, "s");
    out.append(in.tag());
    if ((shared || day) && !in.mentions("/>")) {
      value(in, out, shared);
    }
  }

  /** Copies the cell just entered up to its value, if it has one, and puts the new value. */
  private void value(Markup in, Writer out, boolean shared) throws IOException {
    while (in.next(out) && !in.opens("v")) {
      out.append(in.tag());
      if (in.mentions("</c>")) {
        return;
      }
    }
    StringWriter value = new StringWriter();
    in.next(value);
    String there = value.toString().strip();
    if (shared) {
      out.append("<is>").append(text(there)).append("</is>");
    } else {
      BigDecimal moved = new BigDecimal(there).add(BigDecimal.valueOf(daysLater));
      out.append("<v>").append(moved.toString()).append("</v>");
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

  private boolean isDay(Markup cell) {
    String type = cell.value("t");
    String format = cell.value("s");
    return (type == null || type.equals("n"))
        && format != null
        && styles.isDay(Integer.parseInt(format));
  }

  private String text(String index) {
    int at = Integer.parseInt(index.strip());
    if (at < 0 || at >= strings.size()) {
      throw new IllegalArgumentException("our sheet names text " + at + " of " + strings.size());
    }
    return strings.get(at);
  }
}
