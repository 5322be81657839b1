package sparewell.save;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
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
}
