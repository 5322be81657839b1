package sparewell.workbook.grid;

import java.io.InputStream;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import sparewell.ooxml.SafeXml;

/** Streams a worksheet part: only cells that hold something, one row at a time. */
record SheetStream(List<String> texts, List<NumberShape> shapes, DateSystem dates) {

  void read(InputStream in, Consumer<RawRow> rows) throws XMLStreamException {
    XMLStreamReader xml = SafeXml.reader(in);
    int row = 0;
    int column = 0;
    List<RawCell> cells = new ArrayList<>();
    while (xml.hasNext()) {
      int event = xml.next();
      if (event == XMLStreamConstants.START_ELEMENT) {
        if (xml.getLocalName().equals("row")) {
          row = rowNumber(xml.getAttributeValue(null, "r"), row + 1);
          column = 0;
        } else if (xml.getLocalName().equals("c")) {
          column = columnNumber(xml.getAttributeValue(null, "r"), column + 1);
          cell(xml, column, cells);
        }
      } else if (event == XMLStreamConstants.END_ELEMENT) {
        if (xml.getLocalName().equals("row") && !cells.isEmpty()) {
          rows.accept(new RawRow(row, cells));
          cells.clear();
        } else if (xml.getLocalName().equals("sheetData")) {
          break;
        }
      }
    }
    xml.close();
  }

  private void cell(XMLStreamReader xml, int column, List<RawCell> cells)
      throws XMLStreamException {
    String style = xml.getAttributeValue(null, "s");
    String type = xml.getAttributeValue(null, "t");
    String value = null;
    String inline = null;
    boolean formula = false;
    while (true) {
      int event = xml.next();
      if (event == XMLStreamConstants.END_ELEMENT && xml.getLocalName().equals("c")) {
        break;
      }
      if (event == XMLStreamConstants.START_ELEMENT) {
        switch (xml.getLocalName()) {
          case "v" -> value = xml.getElementText();
          case "is" -> inline = CellText.read(xml);
          case "f" -> {
            formula = true;
            CellText.read(xml);
          }
          default -> CellText.read(xml);
        }
      }
    }
    if (inline != null) {
      add(cells, RawCell.text(column, inline));
    } else if (value != null && !(value.isEmpty() && !"str".equals(type))) {
      add(cells, valued(column, type == null ? "n" : type, value, shape(style)));
    } else if (formula) {
      cells.add(new RawCell(column, RawCell.Kind.UNCOMPUTED, "", 0, shape(style)));
    }
  }

  private static void add(List<RawCell> cells, RawCell cell) {
    if (!cell.blank()) {
      cells.add(cell);
    }
  }

  private RawCell valued(int column, String type, String value, NumberShape shape) {
    return switch (type) {
      case "s" -> {
        String text = SharedParts.at(texts, value, null);
        yield text == null
            ? damaged(column, "a text that the file does not hold")
            : RawCell.text(column, text);
      }
      case "str", "inlineStr" -> RawCell.text(column, CellText.unescape(value));
      case "b" ->
          RawCell.of(
              column, RawCell.Kind.BOOLEAN, value.strip().matches("1|true") ? "TRUE" : "FALSE");
      case "e" -> RawCell.of(column, RawCell.Kind.ERROR, value.strip());
      case "d" -> isoDate(column, value.strip());
      default -> number(column, value.strip(), shape);
    };
  }

  /** Shape of a format; an index out of range is general, as in spreadsheet programs. */
  NumberShape shape(String format) {
    return SharedParts.at(shapes, format, NumberShape.GENERAL);
  }

  private RawCell number(int column, String value, NumberShape shape) {
    try {
      return RawCell.number(column, Double.parseDouble(value), shape, dates);
    } catch (NumberFormatException e) {
      return damaged(column, "'" + value + "' where the file promises a number");
    }
  }

  private static RawCell isoDate(int column, String value) {
    try {
      LocalDate date = LocalDate.parse(value.length() > 10 ? value.substring(0, 10) : value);
      return new RawCell(
          column, RawCell.Kind.DATE, date.toString(), date.toEpochDay(), NumberShape.DATE);
    } catch (DateTimeParseException e) {
      return damaged(column, "'" + value + "' where the file promises a date");
    }
  }

  private static RawCell damaged(int column, String what) {
    return RawCell.of(column, RawCell.Kind.DAMAGED, what);
  }

  static int rowNumber(String text, int next) {
    int number = SharedParts.digits(text);
    return number > 0 ? number : next;
  }

  static int columnNumber(String reference, int next) {
    if (reference == null) {
      return next;
    }
    int column = 0;
    for (int i = 0; i < reference.length() && column < 1 << 20; i++) {
      char c = reference.charAt(i);
      if (c >= 'A' && c <= 'Z') {
        column = column * 26 + c - 'A' + 1;
      } else if (c >= 'a' && c <= 'z') {
        column = column * 26 + c - 'a' + 1;
      } else if (c != '$') {
        break;
      }
    }
    return column == 0 ? next : column;
  }
}
