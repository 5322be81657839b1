package sparewell.save;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.Zips;

/** Workbooks whose formulas read our sheets are recalculated on opening. */
class PartScanTest {
  private static final String SHEET = "xl/worksheets/sheet1.xml";

  @TempDir private Path folder;

  private static String cell(String formula) {
    return "<c r=\"B1\"><f>" + formula + "</f><v>99</v></c>";
  }

  private Path book(String part, String before, String inserted) throws IOException {
    Map<String, byte[]> parts = Zips.read(Zips.ordinary("Stock", "Trips"));
    Zips.edit(parts, part, before, inserted + before);
    return Files.write(folder.resolve("mine.xlsx"), Zips.write(parts));
  }

  private static boolean asks(Path book) throws IOException, WorkbookRefused {
    Saving.into(book);
    String workbook = Zips.text(Zips.read(Files.readAllBytes(book)), "xl/workbook.xml");
    return workbook.contains("fullCalcOnLoad=\"1\"");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "SUM(Spares!B4:B6)| true",
        "'Buy list'!B5| true",
        "SUM(&apos;After trip&apos;!B4:B6)| true",
        "SUM(spares:Trips!B4)| true",
        "SUM('Stock:Buy list'!B4)| true",
        "SUM(sw_second[Pieces])| true",
        "ROWS(SW_THIRD)| true",
        "INDIRECT(&quot;Spares!B4&quot;)| true",
        "SUM(Trips!A1:A9)| false",
        "'Not Spares'!B5| false",
        "'Trips''Spares'!B5| false",
        "MySpares!B5| false",
        "SUM(Owned[Pieces])| false"
      },
      quoteCharacter = '~')
  void inACell(String formula, boolean asked) throws Exception {
    assertEquals(asked, asks(book(SHEET, "</row>", cell(formula))));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"Spares!$B$4:$B$6| true", "sw_second[Pieces]| true", "Trips!$B$4| false"})
  void inADefinedNameARuleOrAChart(String reference, boolean asked) throws Exception {
    String name = "<definedNames><definedName name=\"Mine\">" + reference + "</definedName>";
    assertEquals(asked, asks(book("xl/workbook.xml", "</workbook>", name + "</definedNames>")));
    String list =
        "<dataValidations count=\"1\"><dataValidation type=\"list\" sqref=\"C1\"><formula1>"
            + reference
            + "</formula1></dataValidation></dataValidations>";
    assertEquals(asked, asks(book(SHEET, "<pageMargins", list)));
    String rule =
        "<conditionalFormatting sqref=\"C1\"><cfRule type=\"expression\" priority=\"1\"><formula>"
            + reference
            + "&gt;1</formula></cfRule></conditionalFormatting>";
    assertEquals(asked, asks(book(SHEET, "<pageMargins", rule)));
    Map<String, byte[]> parts = Zips.read(Zips.ordinary("Stock"));
    parts.put("xl/charts/chart7.xml", Zips.utf8("<c><f>" + reference + "</f></c>"));
    String type = "application/vnd.openxmlformats-officedocument.drawingml.chart+xml";
    Zips.edit(
        parts,
        "[Content_Types].xml",
        "</Types>",
        "<Override PartName=\"/xl/charts/chart7.xml\" ContentType=\"" + type + "\"/></Types>");
    assertEquals(asked, asks(Files.write(folder.resolve("chart.xlsx"), Zips.write(parts))));
  }

  /** A pivot table names the sheet it counts without a mark (ECMA-376 part 1, 18.10.1.95). */
  @ParameterizedTest
  @CsvSource({"Spares, true", "spares, true", "Trips, false"})
  void asTheSourceOfAPivotTable(String sheet, boolean asked) throws Exception {
    Map<String, byte[]> parts = Zips.read(Zips.ordinary("Stock", "Trips"));
    String part = "xl/pivotCache/pivotCacheDefinition1.xml";
    String source = "<worksheetSource ref=\"A1:C4\" sheet=\"" + sheet + "\"/>";
    parts.put(part, Zips.utf8("<pivotCacheDefinition>" + source + "</pivotCacheDefinition>"));
    String type =
        "application/vnd.openxmlformats-officedocument.spreadsheetml.pivotCacheDefinition+xml";
    String entry = "<Override PartName=\"/" + part + "\" ContentType=\"" + type + "\"/>";
    Zips.edit(parts, "[Content_Types].xml", "</Types>", entry + "</Types>");
    assertEquals(asked, asks(Files.write(folder.resolve("pivot.xlsx"), Zips.write(parts))));
  }

  @Test
  void aCalculationThatIsSetUpKeepsItsSettings() throws Exception {
    String settings = "<calcPr iterate=\"1\"";
    Path book = book("xl/workbook.xml", "</workbook>", settings + "/>");
    Map<String, byte[]> parts = Zips.read(Files.readAllBytes(book));
    Zips.edit(parts, SHEET, "</row>", cell("Spares!B4") + "</row>");
    Files.write(book, Zips.write(parts));
    assertEquals(true, asks(book));
    String workbook = Zips.text(Zips.read(Files.readAllBytes(book)), "xl/workbook.xml");
    assertTrue(workbook.contains(settings + " fullCalcOnLoad=\"1\"/>"), workbook);
  }

  @Test
  void anotherProgramShowsTheNewValues() throws Exception {
    assumeTrue(Programs.has("soffice"), "LibreOffice is not installed");
    Path book =
        book(
            SHEET,
            "</row>",
            cell("SUM(sw_second[Pieces])")
                + cell("SUM('Buy list'!B4:B6)").replace("B1", "C1")
                + cell("SUM(Spares:'Buy list'!B4)").replace("B1", "D1"));
    Saving.into(book);
    Saving.into(book);
    // By default it shows the values that it finds; here it is set to calculate on opening.
    String always =
        "<oor:items xmlns:oor=\"http://openoffice.org/2001/registry\"><item"
            + " oor:path=\"/org.openoffice.Office.Calc/Formula/Load\"><prop"
            + " oor:name=\"OOXMLRecalcMode\" oor:op=\"fuse\"><value>0</value></prop></item>"
            + "</oor:items>";
    Path settings = Files.createDirectories(folder.resolve("profile/user"));
    Files.writeString(settings.resolve("registrymodifications.xcu"), always);
    List<String> command = new ArrayList<>(List.of("soffice", "--headless"));
    command.add("-env:UserInstallation=" + folder.resolve("profile").toUri());
    command.addAll(
        List.of("--convert-to", "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,,,,,,-1"));
    command.addAll(List.of("--outdir", folder.toString(), book.toString()));
    assertEquals(0, Programs.run(folder, 3, TimeUnit.MINUTES, command));
    // OwnSample puts 10 to 12 under Pieces of the second sheet, 20 to 22 of the third.
    String shown = Files.readString(folder.resolve("mine-Stock.csv")).strip();
    assertEquals("in Stock,33,63,30", shown.replace("\"", ""));
  }
}
