package sparewell.workbook.template;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.poi.ooxml.POIXMLProperties;
import org.apache.poi.xssf.usermodel.XSSFColor;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import sparewell.units.UnitSystem;
import sparewell.workbook.InputColumn;
import sparewell.workbook.InputSheet;
import sparewell.workbook.InputSheets;
import sparewell.workbook.demo.DemoRows;
import sparewell.workbook.demo.DemoSeason;

/** Makes new workbooks: blank ones to fill, and demos. The same call gives the same bytes. */
final class TemplateWriter {
  private static final Date CREATED = Date.from(Instant.parse("2026-01-01T00:00:00Z"));

  private static final byte[] SET_UP_TAB = {0x2F, 0x4A, 0x5C};
  private static final byte[] LOG_TAB = {(byte) 0xC9, (byte) 0x7B, 0x2B};
  private static final byte[] AHEAD_TAB = {0x6B, (byte) 0x8E, 0x4E};

  private TemplateWriter() {}

  static byte[] bytes(UnitSystem units, TemplateKind kind) throws IOException {
    try (XSSFWorkbook book = new XSSFWorkbook()) {
      fill(book, units, kind);
      return bytes(book, kind == TemplateKind.BLANK ? "Tackle workbook" : "Tackle workbook, demo");
    }
  }

  private static void fill(XSSFWorkbook book, UnitSystem units, TemplateKind kind) {
    CellLooks looks = new CellLooks(book);
    ReadMeFirst.add(book, looks, units, kind);
    Map<String, List<List<Object>>> rows =
        kind == TemplateKind.BLANK
            ? Examples.rows(units)
            : DemoRows.of(DemoSeason.standard(), units);
    for (InputSheet form : InputSheets.ALL) {
      SheetWriter writer = new SheetWriter(book, looks, units, form, kind != TemplateKind.MESSY);
      List<List<Object>> own = rows.getOrDefault(form.name(), List.of());
      Optional<List<InputColumn>> named = named(form);
      if (named.isPresent()) {
        writer.named(named.get(), own);
      } else {
        writer.columns(own);
      }
      XSSFSheet sheet = book.getSheet(form.name());
      sheet.setTabColor(new XSSFColor(tab(form)));
    }
    if (kind == TemplateKind.MESSY) {
      MessyBook.spoil(book);
    }
    Dropdowns.add(book);
    book.setActiveSheet(0);
  }

  private static Optional<List<InputColumn>> named(InputSheet form) {
    if (form == InputSheets.SETTINGS) {
      return Optional.of(InputSheets.SETTING_ROWS.columns());
    }
    return form == InputSheets.BOAT
        ? Optional.of(InputSheets.BOAT_ROWS.columns())
        : Optional.empty();
  }

  private static byte[] tab(InputSheet form) {
    if (List.of(
            InputSheets.TRIPS,
            InputSheets.STYLE_HOURS,
            InputSheets.LOSSES,
            InputSheets.RESTOCKS,
            InputSheets.TRANSFERS,
            InputSheets.BOX_LOG,
            InputSheets.COUNTS)
        .contains(form)) {
      return LOG_TAB;
    }
    return form == InputSheets.EVENTS || form == InputSheets.EVENT_PLAN ? AHEAD_TAB : SET_UP_TAB;
  }

  /** Contents of a workbook, its times left out. */
  static byte[] bytes(XSSFWorkbook book, String title) throws IOException {
    POIXMLProperties.CoreProperties core = book.getProperties().getCoreProperties();
    core.setCreator("Sparewell");
    core.setTitle(title);
    core.getUnderlyingProperties().setLanguageProperty("en");
    core.setCreated(Optional.of(CREATED));
    core.setModified(Optional.of(CREATED));
    ByteArrayOutputStream raw = new ByteArrayOutputStream();
    book.write(raw);
    return FixedZip.mended(raw.toByteArray());
  }
}
