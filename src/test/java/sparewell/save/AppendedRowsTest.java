package sparewell.save;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.ooxml.NewCell;
import sparewell.ooxml.NewRows;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.Zips;
import sparewell.save.append.AppendRequest;

/** New rows of a sheet look, reckon and are checked as the rows above them. */
class AppendedRowsTest {
  private static final String SHEET = "xl/worksheets/sheet1.xml";
  private static final String HEAD =
      "<row r=\"1\"><c r=\"A1\" t=\"inlineStr\"><is><t>Style</t></is></c></row>";

  @TempDir private Path folder;
  private Map<String, byte[]> parts;

  @BeforeEach
  void make() {
    parts = Zips.read(Zips.ordinary("Losses", "Sums"));
    Zips.edit(
        parts,
        "xl/styles.xml",
        "</cellXfs>",
        "<xf numFmtId=\"2\"/><xf numFmtId=\"14\"/></cellXfs>");
  }

  private void sheet(String before, String rows, String behind) {
    parts.put(
        SHEET,
        Zips.utf8(
            "<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">"
                + before
                + "<sheetData>"
                + rows
                + "</sheetData>"
                + behind
                + "</worksheet>"));
  }

  private static NewCell number(int column, double value) {
    return new NewCell(column, NewCell.Kind.NUMBER, "", value);
  }

  private static NewCell text(int column, String value) {
    return new NewCell(column, NewCell.Kind.TEXT, value, 0);
  }

  /** Adds rows below row 2 of a table over columns A to C; its second row is their model. */
  private Map<String, byte[]> append(List<List<NewCell>> rows) throws Exception {
    Path book = Files.write(folder.resolve("season.xlsx"), Zips.write(parts));
    try (WorkbookPackage read = WorkbookPackage.open(book)) {
      NewRows added = new NewRows(read.sheets().get(0), 1, 2, 2, 1, 3, rows);
      WorkbookSaver.append(
          new AppendRequest(
              read, List.of(added), style -> style == 2, written -> true, Saving.NOW, 10));
    }
    return Zips.read(Files.readAllBytes(book));
  }

  private void has(Map<String, byte[]> written, String... texts) {
    String sheet = Zips.text(written, SHEET);
    for (String text : texts) {
      assertTrue(sheet.contains(text), text + " in " + sheet);
    }
  }

  private Map<String, byte[]> append(NewCell cell) throws Exception {
    return append(List.of(List.of(cell)));
  }

  @Test
  void cellsTakeTheFormatOfTheirColumn() throws Exception {
    sheet(
        "<dimension ref=\"A1:B2\"/><cols><col min=\"2\" max=\"2\" style=\"1\"/>"
            + "<col min=\"3\" max=\"3\" style=\"2\"/></cols>",
        HEAD + "<row r=\"2\"/>",
        "");
    NewCell day = new NewCell(3, NewCell.Kind.DATE, "2026-03-08", 46_089);
    has(
        append(
            List.of(
                List.of(text(1, "jig"), number(2, 4), day),
                List.of(text(1, "frog"), number(2, 0.5), number(3, 7)))),
        "<dimension ref=\"A1:C4\"/>",
        "<c r=\"A3\" t=\"inlineStr\">",
        "<c r=\"B3\" s=\"1\"><v>4</v></c><c r=\"C3\" s=\"2\"><v>46089</v></c>",
        "<c r=\"B4\" s=\"1\"><v>0.5</v></c><c r=\"C4\"><v>7</v></c>");
  }

  @Test
  void rowsTakeFormatAndHeightOfTheRowAbove() throws Exception {
    String custom = "<row r=\"2\" s=\"1\" customFormat=\"1\" ht=\"30\" customHeight=\"1\"/>";
    sheet("", HEAD + custom, "");
    String written = Zips.text(append(number(2, 4)), SHEET);
    String row = written.replaceAll("(?s).*(<row r=\"3\"[^>]*>).*", "$1");
    for (String kept :
        List.of("s=\"1\"", "customFormat=\"1\"", "ht=\"30\"", "customHeight=\"1\"")) {
      assertTrue(row.contains(" " + kept), row);
    }
    assertTrue(written.contains("<c r=\"B3\" s=\"1\"><v>4</v></c>"), written);
    sheet("", HEAD + "<row r=\"2\" s=\"1\" ht=\"30\"/>", "");
    has(append(number(2, 4)), "<c r=\"B3\"><v>4</v></c>");
    assertFalse(
        Zips.text(append(number(2, 4)), SHEET).matches("(?s).*<row r=\"3\"[^>]* ht=.*"),
        "a height that nobody set");
  }

  @Test
  void blankCellsOfTheTableAreFormattedAndThoseBesideItLeft() throws Exception {
    sheet(
        "",
        HEAD + "<row r=\"2\"><c r=\"A2\"/><c r=\"C2\" s=\"1\"/><c r=\"D2\" s=\"1\"/></row>",
        "");
    Map<String, byte[]> written = append(text(1, "jig"));
    has(written, "<c r=\"C3\" s=\"1\"/></row>");
    assertFalse(Zips.text(written, SHEET).contains("D3"));
  }

  /** Rules of later versions stand in an extension of the sheet (ISO/IEC 29500-3). */
  @Test
  void rulesInAnExtensionGoOn() throws Exception {
    String rules =
        "<extLst><ext><y:rules xmlns:y=\"urn:y\"><y:sqref>%s</y:sqref></y:rules></ext></extLst>";
    sheet("", HEAD + "<row r=\"2\"/>", rules.formatted("B2 E2:E9"));
    has(append(text(1, "jig")), rules.formatted("B2:B3 E2:E9"));
  }

  private String calculation(String settings, boolean formula) throws Exception {
    sheet("", HEAD + "<row r=\"2\"/>", "");
    Map<String, byte[]> kept = Map.copyOf(parts);
    Zips.edit(
        parts,
        "xl/workbook.xml",
        "</sheets>",
        "</sheets><definedNames><definedName name=\"Mine\">Sums!$A$1</definedName></definedNames>"
            + settings
            + "<oleSize ref=\"A1\"/>");
    if (formula) {
      Zips.edit(parts, "xl/worksheets/sheet2.xml", "</row>", "<c r=\"B1\"><f>1+1</f></c></row>");
    }
    String written = Zips.text(append(text(1, "jig")), "xl/workbook.xml");
    parts.putAll(kept);
    return written.replaceAll("(?s).*</definedNames>(.*)<oleSize.*", "$1");
  }

  @Test
  void formulasAreCalculatedOnOpeningWhereThereAreAny() throws Exception {
    String settings = "<calcPr iterate=\"1\"/>";
    assertEquals(settings, calculation(settings, false));
    assertEquals("<calcPr iterate=\"1\" fullCalcOnLoad=\"1\"/>", calculation(settings, true));
    assertEquals("", calculation("", false));
    assertEquals("<calcPr fullCalcOnLoad=\"1\"/>", calculation("", true));
  }

  /** Puts a table (list object) on the sheet. */
  private void table(String area, String more) {
    sheet("", HEAD + "<row r=\"2\"/>", "");
    parts.put(
        "xl/worksheets/_rels/sheet1.xml.rels",
        Zips.utf8(
            "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
                + "<Relationship Id=\"rId1\" Target=\"../tables/table1.xml\" Type=\"http://schemas."
                + "openxmlformats.org/officeDocument/2006/relationships/table\"/></Relationships>"));
    parts.put(
        "xl/tables/table1.xml",
        Zips.utf8(
            "<table xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\" id=\"1\""
                + (" displayName=\"Mine\" ref=\"" + area + "\"" + more + "/>")));
  }

  private String refused() {
    WorkbookRefused refused = assertThrows(WorkbookRefused.class, () -> append(text(1, "jig")));
    return refused.getMessage();
  }

  @Test
  void aTableGoesOnOverItsNewRowsAndAnotherIsNotInTheWay() throws Exception {
    String part = "xl/tables/table1.xml";
    table("A1:C2", " totalsRowCount=\"0\"");
    assertTrue(Zips.text(append(text(1, "jig")), part).contains("ref=\"A1:C3\""));
    table("A1:C3", "");
    assertTrue(Zips.text(append(text(1, "jig")), part).contains("A1:C3"), "has room");
    table("E1:F2", "");
    assertTrue(Zips.text(append(text(1, "jig")), part).contains("ref=\"E1:F2\""));
    table("A3:C5", "");
    assertTrue(refused().contains("Mine"), refused());
    table("A1:C2", " totalsRowCount=\"1\"");
    assertTrue(refused().contains("total"), refused());
  }

  @Test
  void onlyAProtectedSheetIsRefused() throws Exception {
    sheet("", HEAD + "<row r=\"2\"/>", "<sheetProtection objects=\"1\"/>");
    has(append(number(2, 4)), "<c r=\"B3\"><v>4</v></c>");
    sheet("", HEAD + "<row r=\"2\"/>", "<sheetProtection sheet=\"1\"/>");
    assertTrue(refused().contains("protected"), refused());
  }
}
