package sparewell.save;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.Zips;

/** Indexes beyond the end of the angler's lists get no format of ours. */
class OwnStylesTest {
  @TempDir private Path folder;

  /** A workbook with one format; cell A1 has another index. */
  private Path pointing(String index, String formats) throws Exception {
    Map<String, byte[]> parts = Zips.read(Zips.ordinary("Stock"));
    Zips.edit(
        parts,
        "xl/worksheets/sheet1.xml",
        "<c r=\"A1\"",
        "<c r=\"B1\" s=\"" + index + "\"><v>3</v></c><c r=\"A1\"");
    String styles = Zips.text(parts, "xl/styles.xml");
    String one = "<cellXfs count=\"1\"><xf numFmtId=\"0\" fontId=\"0\" fillId=\"0\" borderId=\"0\"";
    assertTrue(styles.contains(one), styles);
    Zips.edit(parts, "xl/styles.xml", "</cellXfs>", formats + "</cellXfs>");
    return Files.write(folder.resolve("mine.xlsx"), Zips.write(parts));
  }

  @Test
  void aCellThatPointsPastTheListOfFormats() throws Exception {
    for (String index : new String[] {"1", "7", "40"}) {

      Path book = pointing(index, "");
      Saving.into(book);
      byte[] first = Files.readAllBytes(book);
      Saving.into(book);
      assertEquals(first.length, Files.readAllBytes(book).length, "styles do not grow");
      try (XSSFWorkbook opened = new XSSFWorkbook(Files.newInputStream(book))) {
        XSSFCellStyle look = opened.getSheet("Stock").getRow(0).getCell(1).getCellStyle();
        assertEquals("General", look.getDataFormatString());
        assertEquals(0, look.getFontIndex());
        assertEquals(0, look.getCoreXf().getFillId());
        assertEquals(0, look.getCoreXf().getBorderId());
      }
    }
  }

  /** Bounded by memory taken, as a time would be the machine's: 1 GB it once was. */
  @Test
  void aWorkbookOfVeryManyFormatsAndNamesIsTakenInLittleMemory() throws Exception {
    String one = "<xf numFmtId=\"0\" fontId=\"0\" fillId=\"0\" borderId=\"0\" xfId=\"0\"/>";
    Map<String, byte[]> parts = Zips.read(Files.readAllBytes(pointing("7", one.repeat(22_000))));
    StringBuilder names = new StringBuilder("<definedNames>");
    for (int i = 0; i < 3_660; i++) {
      names.append("<definedName name=\"Name_" + i + "\">Stock!$A$1</definedName>");
    }
    Zips.edit(parts, "xl/workbook.xml", "</workbook>", names + "</definedNames></workbook>");
    Path book = Files.write(folder.resolve("many.xlsx"), Zips.write(parts));
    ThreadMXBean thread = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long before = thread.getCurrentThreadAllocatedBytes();
    Saving.into(book);
    long megabytes = (thread.getCurrentThreadAllocatedBytes() - before) >> 20;
    assertTrue(megabytes < 300, megabytes + " MB");
    String styles = Zips.text(Zips.read(Files.readAllBytes(book)), "xl/styles.xml");
    assertTrue(styles.split("<xf ").length - 22_000 < 300, "ours beside them are few");
  }

  @Test
  void aListOfFillsThatLacksTheFirst() throws Exception {
    Map<String, byte[]> parts = Zips.read(Zips.ordinary("Stock"));
    String styles = Zips.text(parts, "xl/styles.xml");
    String fills = "<fills count=\"1\"><fill><patternFill patternType=\"gray125\"/></fill></fills>";
    String edited = styles.replaceFirst("<fills.*</fills>", fills);
    parts.put("xl/styles.xml", edited.getBytes(java.nio.charset.StandardCharsets.UTF_8));
    Path book = Files.write(folder.resolve("mine.xlsx"), Zips.write(parts));
    Saving.into(book);
    String written = Zips.text(Zips.read(Files.readAllBytes(book)), "xl/styles.xml");
    String gray = "<fill><patternFill patternType=\"gray125\"/></fill>";
    assertTrue(
        written.contains("\"><fill><patternFill patternType=\"gray125\"/></fill>" + gray), written);
  }

  @Test
  void aFormatThatPointsPastTheListOfFontsAndPatterns() throws Exception {
    Path book =
        pointing("1", "<xf numFmtId=\"170\" fontId=\"3\" fillId=\"4\" borderId=\"2\" xfId=\"0\"/>");
    Saving.into(book);
    try (XSSFWorkbook opened = new XSSFWorkbook(Files.newInputStream(book))) {
      XSSFCellStyle look = opened.getSheet("Stock").getRow(0).getCell(1).getCellStyle();
      assertEquals(11, look.getFont().getFontHeightInPoints());
      assertEquals("Calibri", look.getFont().getFontName());
      assertEquals(0, look.getCoreXf().getFillId() - 4);
      assertEquals("none", look.getBorderTop().name().toLowerCase(java.util.Locale.ROOT));
      String styles = Zips.text(Zips.read(Files.readAllBytes(book)), "xl/styles.xml");
      assertTrue(!styles.contains("numFmtId=\"170\" formatCode"), "our patterns lie above");
    }
  }

  /** Order of lists: ECMA-376 part 1, 18.8.39 (styleSheet). */
  @Test
  void listsThatTheStylesLackStandInTheirPlaces() throws Exception {
    Map<String, byte[]> parts = Zips.read(Zips.ordinary("Stock"));
    String styles = Zips.text(parts, "xl/styles.xml");
    String lacking =
        styles.replace("<numFmts count=\"0\"/>", "").replaceAll("<borders.*</borders>", "");
    parts.put("xl/styles.xml", Zips.utf8(lacking));
    Path book = Files.write(folder.resolve("mine.xlsx"), Zips.write(parts));
    Saving.into(book);
    String written = Zips.text(Zips.read(Files.readAllBytes(book)), "xl/styles.xml");
    int at = 0;
    for (String list : List.of("numFmts", "fonts", "fills", "borders", "cellStyleXfs", "cellXfs")) {
      int next = written.indexOf("<" + list + " ");
      assertTrue(next > at, list + " in " + written);
      at = next;
    }
  }

  @Test
  void aNumberOfAPatternThatOnlyARulesFormatHasIsNotOurs() throws Exception {
    Map<String, byte[]> parts = Zips.read(Zips.ordinary("Stock"));
    String rule =
        "<dxfs count=\"1\"><dxf><numFmt numFmtId=\"200\" formatCode=\"0.0\"/></dxf></dxfs>";
    Zips.edit(parts, "xl/styles.xml", "</styleSheet>", rule + "</styleSheet>");
    Path book = Files.write(folder.resolve("mine.xlsx"), Zips.write(parts));
    Saving.into(book);
    String written = Zips.text(Zips.read(Files.readAllBytes(book)), "xl/styles.xml");
    assertTrue(written.contains("numFmtId=\"201\""), written);
    assertTrue(!written.contains("numFmtId=\"164\""), written);
  }

  @Test
  void columnsAreNarrowerInALargeFontOfTheWorkbook() throws Exception {
    Map<String, byte[]> parts = Zips.read(Zips.ordinary("Stock"));
    assertEquals(1, widthFactor(parts), 1e-9);
    Zips.edit(parts, "xl/styles.xml", "<sz val=\"11.0\"/>", "<sz val=\"22.0\"/>");
    assertEquals(0.5, widthFactor(parts), 0.05);
  }

  private double widthFactor(Map<String, byte[]> parts) throws Exception {
    Path book = Files.write(folder.resolve("mine.xlsx"), Zips.write(parts));
    try (WorkbookPackage opened = WorkbookPackage.open(book)) {
      return OwnParts.of(opened, List.of()).widthFactor();
    }
  }
}
