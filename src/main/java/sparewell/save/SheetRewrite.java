package sparewell.save;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.util.List;
import java.util.Set;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import sparewell.ooxml.SafeXml;

/**
 * One of our sheets (or its tables), made to stand in another workbook: texts stand in their cells,
 * formats have the indexes of the angler's styles, and the sheet is not selected.
 */
final class SheetRewrite {
  private static final Set<String> DIFFERENTIAL =
      Set.of(
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

  void rewrite(InputStream part, Appendable out) throws IOException, XMLStreamException {
    out.append("<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n");
    XMLStreamReader in = SafeXml.reader(part);
    boolean shared = false;
    boolean day = false;
    while (in.hasNext()) {
      int event = in.next();
      if (event != XMLStreamConstants.START_ELEMENT) {
        XmlCopy.other(in, out);
        continue;
      }
      String element = in.getLocalName();
      if (element.equals("c")) {
        shared = "s".equals(in.getAttributeValue(null, "t"));
        day = daysLater != 0 && isDay(in);
      }
      if (shared && element.equals("v")) {
        out.append("<is>").append(text(XmlCopy.inside(in))).append("</is>");
        shared = false;
      } else if (day && element.equals("v")) {
        XmlCopy.startTag(in, this::attribute, out);
        BigDecimal there = new BigDecimal(XmlCopy.inside(in).strip());
        out.append(there.add(BigDecimal.valueOf(daysLater)).toString());
        out.append("</v>");
        day = false;
      } else {
        XmlCopy.startTag(in, this::attribute, out);
      }
    }
  }

  private boolean isDay(XMLStreamReader cell) {
    String type = cell.getAttributeValue(null, "t");
    String format = cell.getAttributeValue(null, "s");
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

  private String attribute(String element, String attribute, String value) {
    if (attribute.equals("t") && element.equals("c") && value.equals("s")) {
      return "inlineStr";
    }
    if (attribute.equals("s") && (element.equals("c") || element.equals("row"))
        || attribute.equals("style") && element.equals("col")) {
      return String.valueOf(styles.cellFormat(Integer.parseInt(value)));
    }
    boolean width =
        attribute.equals("width") && element.equals("col") || attribute.equals("defaultColWidth");
    if (width && styles.widthFactor() != 1) {
      return String.valueOf(Math.min(255, Double.parseDouble(value) * styles.widthFactor()));
    }
    if (DIFFERENTIAL.contains(attribute)) {
      return String.valueOf(styles.differentialFormat(Integer.parseInt(value)));
    }
    return attribute.equals("tabSelected") && element.equals("sheetView") ? null : value;
  }
}
