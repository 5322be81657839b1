package sparewell.save;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.Zips;

/** Order of tabs, the tab shown, and names of sheets, where sheets of ours come, stay and leave. */
class TabsTest {
  private static final String WORKBOOK = "xl/workbook.xml";

  @TempDir private Path folder;
  private Path book;

  @BeforeEach
  void make() throws Exception {
    book = Files.write(folder.resolve("season.xlsx"), Zips.ordinary("Stock", "Trips"));
  }

  private void save(int front, String... names) throws Exception {
    try (WorkbookPackage original = WorkbookPackage.open(book)) {
      Saving.save(original, book, OwnSample.sheets(List.of(names), "x"), front, Saving.NOW);
    }
  }

  private void edit(String from, String to) throws Exception {
    Map<String, byte[]> parts = Zips.read(Files.readAllBytes(book));
    Zips.edit(parts, WORKBOOK, from, to);
    Files.write(book, Zips.write(parts));
  }

  private List<String> tabs() throws Exception {
    try (WorkbookPackage opened = WorkbookPackage.open(book)) {
      return opened.sheets().stream().map(SheetEntry::name).toList();
    }
  }

  private String workbook() throws Exception {
    return Zips.text(Zips.read(Files.readAllBytes(book)), WORKBOOK);
  }

  private String shown() throws Exception {
    try (XSSFWorkbook opened = new XSSFWorkbook(Files.newInputStream(book))) {
      return opened.getSheetName(opened.getActiveSheetIndex());
    }
  }

  @Test
  void sheetsInFrontStandInTheirOrder() throws Exception {
    save(2, "After trip", "Spares", "Buy list");
    assertEquals(List.of("After trip", "Spares", "Stock", "Trips", "Buy list"), tabs());
  }

  @Test
  void aNewSheetStandsRightBehindTheOneBeforeIt() throws Exception {
    save(1, "After trip", "Spares");
    String xml = workbook();
    String trips = xml.replaceAll("(?s).*(<sheet name=\"Trips\"[^>]*/>).*", "$1");
    edit(trips, "");
    edit("</sheets>", trips + "</sheets>");
    edit("localSheetId=\"3\"", "localSheetId=\"2\"");
    assertEquals(List.of("After trip", "Stock", "Spares", "Trips"), tabs());
    save(1, "After trip", "Spares", "Buy list");
    assertEquals(List.of("After trip", "Stock", "Spares", "Buy list", "Trips"), tabs());
  }

  @Test
  void aSheetThatStaysIsTheNewOneWhenAnotherBeforeItLeaves() throws Exception {
    save(1, "After trip", "Spares", "Buy list");
    save(1, "After trip", "Buy list");
    assertEquals(List.of("After trip", "Stock", "Trips", "Buy list"), tabs());
    try (XSSFWorkbook opened = new XSSFWorkbook(Files.newInputStream(book))) {
      // The second sheet of a sample holds 10 to 12 pieces, the third 20 to 22.
      assertEquals(10, opened.getSheet("Buy list").getRow(3).getCell(1).getNumericCellValue());
    }
  }

  @Test
  void theNearestVisibleTabIsShownWhenTheOneShownLeaves() throws Exception {
    save(1, "After trip", "Spares", "Buy list");
    edit("activeTab=\"1\"", "activeTab=\"4\"");
    assertEquals("Buy list", shown());
    Path copy = Files.copy(book, folder.resolve("copy.xlsx"));
    save(1, "After trip");
    assertEquals("Trips", shown());
    book = copy;
    edit("<sheet name=\"Trips\"", "<sheet name=\"Trips\" state=\"hidden\"");
    save(1, "After trip");
    assertEquals("Stock", shown());
  }

  @Test
  void theFirstTabInViewStaysInView() throws Exception {
    edit("activeTab=\"0\"", "firstSheet=\"1\"");
    save(1, "After trip", "Spares");
    assertTrue(workbook().contains("firstSheet=\"2\""), workbook());
    assertTrue(workbook().contains("activeTab=\"1\""), workbook());
  }

  @Test
  void aNameTheAnglerGaveToACellOfOurSheetStays() throws Exception {
    save(1, "After trip", "Spares");
    String mine = "<definedName name=\"Mine\" localSheetId=\"0\">'After trip'!$B$4</definedName>";
    edit("</definedNames>", mine + "</definedNames>");
    save(1, "After trip", "Spares");
    assertTrue(workbook().contains(mine), workbook());
    save(1, "Spares");
    assertFalse(workbook().contains("Mine"), "its sheet has left");
  }

  /** Order of sections: ECMA-376 part 1, 18.2.27 (workbook). */
  @Test
  void namesStandBehindTheSheetsAndTheCalculationBehindThem() throws Exception {
    edit("</sheets>", "</sheets><functionGroups/><oleSize ref=\"A1\"/>");
    save(1, "After trip");
    String xml = workbook();
    assertTrue(xml.indexOf("<functionGroups") < xml.indexOf("<definedNames"), xml);
    assertTrue(xml.indexOf("</definedNames") < xml.indexOf("<oleSize"), xml);
  }

  @Test
  void namesOfOurTablesMeetNoNameOfTheAnglers() throws Exception {
    String names =
        "<definedName name=\"SW_Second\">Stock!$A$1</definedName>"
            + "<definedName name=\"sw_second_2\">Stock!$A$1</definedName>";
    edit("</sheets>", "</sheets><definedNames>" + names + "</definedNames>");
    save(1, "After trip", "Spares");
    try (XSSFWorkbook opened = new XSSFWorkbook(Files.newInputStream(book))) {
      assertEquals("sw_second_3", opened.getSheet("Spares").getTables().get(0).getDisplayName());
    }
  }

  @Test
  void aNumberBehindANameOfOursIsNoPartOfIt() {
    List<String> names = List.of("Spares", "Buy list");
    assertEquals(Optional.of("Spares"), OwnSheetNames.wanted("spares (2)", names));
    assertEquals(Optional.of("Buy list"), OwnSheetNames.wanted("Buy list", names));
    assertEquals(Optional.empty(), OwnSheetNames.wanted("Spares 2", names));
  }
}
