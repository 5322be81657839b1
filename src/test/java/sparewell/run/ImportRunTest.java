package sparewell.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.util.AreaReference;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellRangeAddressList;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFTable;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.Zips;
import sparewell.save.PartComparison;
import sparewell.save.Programs;
import sparewell.season.Loss;
import sparewell.season.Season;
import sparewell.season.Trip;
import sparewell.units.MassUnit;
import sparewell.workbook.Books;
import sparewell.workbook.DateOrder;
import sparewell.workbook.InputSheet;
import sparewell.workbook.InputSheets;
import sparewell.workbook.importing.ImportSource;
import sparewell.workbook.read.ReadOptions;
import sparewell.workbook.read.SeasonReader;

/** Rows of CSV files come into the workbook, and nothing else of it changes. */
class ImportRunTest {
  private static final LocalDateTime NOW = LocalDateTime.of(2026, 6, 30, 20, 15, 0);
  private static final String LOSSES = "Trip,Style,Size,Colour,Lost,Cause\n";

  @TempDir private Path folder;
  private Path book;

  @BeforeEach
  void make() throws IOException {
    folder = folder.toRealPath();
    book = Books.season().write(folder.resolve("season.xlsx"));
  }

  private Path csv(String name, String text) throws IOException {
    return Files.write(folder.resolve(name), text.getBytes(StandardCharsets.UTF_8));
  }

  private Outcome take(InputSheet sheet, String text) throws IOException {
    return take(sheet, csv("in.csv", text));
  }

  private Outcome take(InputSheet sheet, Path file) {
    return ImportRun.run(
        book, List.of(new ImportSource(sheet, file)), Optional.empty(), false, NOW, 10);
  }

  private Season season() throws Exception {
    try (WorkbookPackage opened = WorkbookPackage.open(book)) {
      return SeasonReader.read(opened, ReadOptions.on(LocalDate.of(2026, 7, 15))).season();
    }
  }

  private List<String> files() throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }

  /** Opens what was written with another library. */
  private void look(Consumer<XSSFWorkbook> at) throws IOException {
    try (XSSFWorkbook opened =
        new XSSFWorkbook(new ByteArrayInputStream(Files.readAllBytes(book)))) {
      at.accept(opened);
    }
  }

  private static void ok(Outcome outcome) {
    assertEquals(List.of(), outcome.problems());
    assertEquals(ExitCode.DONE, outcome.exitCode());
  }

  private void refused(Outcome outcome, String... because) throws IOException {
    assertEquals(ExitCode.REFUSED, outcome.exitCode());
    String all = String.join("\n", outcome.problems());
    for (String part : because) {
      assertTrue(all.contains(part), all);
    }
    assertFalse(files().contains("season-backups"), "nothing was written");
  }

  @Test
  void allFiveSheetsAreReadBack() throws Exception {
    Files.delete(book);
    book =
        Books.season()
            .with(
                "Restocks",
                "Date|Style|Size|Colour|Box|Count|Cost\n2026-02-01|Worm||Green|Tray A|1|5")
            .write(folder.resolve("season.xlsx"));
    byte[] before = Files.readAllBytes(book);
    Outcome outcome =
        ImportRun.run(
            book,
            List.of(
                new ImportSource(
                    InputSheets.LOSSES,
                    csv("l.csv", "Style,Trip,Lost,Color,Size,Ran out\ncrank,t2,3,red,3/8,x\n")),
                new ImportSource(
                    InputSheets.TRIPS,
                    csv("t.csv", "Date,Trip,Hours,Days,Cover\n2026-04-05,T2,6.5,2,Grass\n")),
                new ImportSource(
                    InputSheets.STYLE_HOURS, csv("h.csv", "Trip,Style,Hours\nT2,Crank,6:30\n")),
                new ImportSource(
                    InputSheets.RESTOCKS,
                    csv(
                        "r.csv",
                        "Date,Style,Colour,Box,Qty,Cost\n2026-04-06,Worm,Green,Tray A,0.5,$2.50\n")),
                new ImportSource(
                    InputSheets.STOCK,
                    csv("s.csv", "Style,Box,Count,Counted on\nWorm,Shelf,1.5,2026-04-07\n"))),
            Optional.empty(),
            false,
            NOW,
            10);
    ok(outcome);
    Season season = season();
    assertEquals(
        new Trip(
            "T2",
            LocalDate.of(2026, 4, 5),
            "",
            OptionalDouble.of(6.5),
            2,
            Optional.of("Grass"),
            season.trips().get(1).origin()),
        season.trips().get(1));
    assertEquals(6.5, season.styleHours().get(2).thrownHours());
    Loss loss = season.losses().get(1);
    assertEquals("Crank 3/8 Red", loss.item().spoken());
    assertEquals(3, loss.lostPieces());
    assertTrue(loss.ranOut());
    assertEquals(5, season.restocks().get(1).addedPieces());
    assertEquals("2.50", season.restocks().get(1).cost().orElseThrow().toPlainString());
    assertEquals(15, season.stock().get(3).countedPieces());
    assertEquals(
        List.of(
            "xl/worksheets/sheet3.xml has other bytes",
            "xl/worksheets/sheet6.xml has other bytes",
            "xl/worksheets/sheet7.xml has other bytes",
            "xl/worksheets/sheet8.xml has other bytes",
            "xl/worksheets/sheet9.xml has other bytes"),
        PartComparison.differences(before, Files.readAllBytes(book), List.of()).stream()
            .sorted()
            .toList());
    Path backup = folder.resolve("season-backups/season 2026-06-30 201500.xlsx");
    assertArrayEquals(before, Files.readAllBytes(backup));
  }

  @Test
  void theLedgersTakeRowsToo() throws Exception {
    Files.delete(book);
    book =
        Books.season()
            .with("Transfers", "Date|Style|Size|Colour|Count|From box|To box|Note")
            .with("Box log", "Date|Box|Compartment|Checked|Note")
            .with("Counts", "Date|Style|Size|Colour|Box|Count|Note")
            .write(folder.resolve("season.xlsx"));
    ok(
        ImportRun.run(
            book,
            List.of(
                new ImportSource(
                    InputSheets.TRANSFERS,
                    csv(
                        "t.csv",
                        "Date,Style,Colour,Qty,From,To\n2026-04-06,Worm,Green,0.5,Tray A,Shelf\n")),
                new ImportSource(
                    InputSheets.BOX_LOG,
                    csv("b.csv", "Date,Box,Compartment,Checked\n2026-04-06,Tray A,Stern,x\n")),
                new ImportSource(
                    InputSheets.COUNTS,
                    csv("c.csv", "Date,Style,Colour,Box,Count\n2026-04-07,Worm,Green,Shelf,2\n"))),
            Optional.empty(),
            false,
            NOW,
            10));
    Season season = season();
    assertEquals(5, season.transfers().get(0).carriedPieces());
    assertEquals("Stern", season.boxes().get(0).compartment());
    assertEquals(20, season.recounts().get(0).countedPieces());
  }

  @Test
  void onlyTextIsAddedToTheSheet() throws Exception {
    String before = Zips.text(Zips.read(Files.readAllBytes(book)), "xl/worksheets/sheet8.xml");
    ok(take(InputSheets.LOSSES, LOSSES + "T1,Worm,,Green,1,fish\n"));
    String after = Zips.text(Zips.read(Files.readAllBytes(book)), "xl/worksheets/sheet8.xml");
    String added = after.substring(after.indexOf("<row r=\"3\""), after.indexOf("</sheetData>"));
    assertEquals(before, after.replace(added, "").replace("A1:G3", "A1:G2"));
    assertTrue(before.contains("<dimension ref=\"A1:G2\"/>"), before);
  }

  @Test
  void theSameFileTwiceAddsNothing() throws Exception {
    String twoAlike = LOSSES + "T1,Worm,,Green,1,fish\nT1,Worm,,Green,1,fish\n";
    ok(take(InputSheets.LOSSES, twoAlike));
    assertEquals(3, season().losses().size());
    byte[] before = Files.readAllBytes(book);
    Outcome again = take(InputSheets.LOSSES, twoAlike);
    ok(again);
    assertArrayEquals(before, Files.readAllBytes(book));
    assertTrue(again.summary().get(0).contains("0 rows added"), again.summary().get(0));
    assertTrue(again.summary().get(0).contains("2 were there already"), again.summary().get(0));
    ok(take(InputSheets.LOSSES, twoAlike + "T1,Worm,,Green,1,fish\n"));
    assertEquals(4, season().losses().size());
  }

  @Test
  void aRowIsKnownHoweverItIsWritten() throws Exception {
    Outcome outcome =
        take(
            InputSheets.LOSSES,
            "TRIP;style;Size;Colour;Lost;Cause;Ran out\nt1;CRANK;3/8;red;2,0;Snags;\n");
    ok(outcome);
    assertTrue(outcome.summary().get(0).contains("1 were there already"), outcome.summary().get(0));
    outcome = take(InputSheets.TRIPS, "Trip\tDate\tHours\nT1\t2026-03-01\t8,0\n");
    ok(outcome);
    assertTrue(outcome.summary().get(0).contains("0 rows added"), outcome.summary().get(0));
  }

  @Test
  void semicolonsDecimalCommasAndWindowsText() throws Exception {
    Files.write(
        folder.resolve("in.csv"),
        "Trip;Date;Water;Hours\nHerbst;2026-04-05;M\u00fchlteich \u20ac;7,25\n"
            .getBytes(Charset.forName("windows-1252")));
    refused(take(InputSheets.TRIPS, folder.resolve("in.csv")), "no column", "Water");
    remake(Books.season().with("Trips", "Trip|Date|Hours|Water\nT1|2026-03-01|8|Pond"));
    ok(take(InputSheets.TRIPS, folder.resolve("in.csv")));
    assertEquals(7.25, season().trips().get(1).fishedHours().orElseThrow());
    assertEquals("M\u00fchlteich \u20ac", season().trips().get(1).water());
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-8", "UTF-16LE", "UTF-16BE"})
  void byteOrderMarks(String charset) throws Exception {
    Files.write(
        folder.resolve("in.csv"),
        "\ufeffTrip,Style,Colour,Lost\nT1,Worm,Ros\u00e9,2\n".getBytes(Charset.forName(charset)));
    ok(take(InputSheets.LOSSES, folder.resolve("in.csv")));
    assertEquals("Ros\u00e9", season().losses().get(1).item().colour());
  }

  @Test
  void aTextThatWouldBeLostIsNoReasonToGuess() throws Exception {
    refused(
        take(InputSheets.STYLE_HOURS, "Trip,Style\nT1,Worm\n"),
        "in.csv cannot be read as Style hours: its header lacks Hours");
    Files.delete(book);
    book =
        Books.season()
            .with("Losses", "Trip|Style|Lost\nT1|Crank|2")
            .write(folder.resolve("season.xlsx"));
    refused(
        take(InputSheets.LOSSES, LOSSES + "T1,Worm,,Green,1,fish\n"),
        "no column for what stands in",
        "Colour, Cause");
  }

  @Test
  void unusableFilesAreAllListedAndNothingIsWritten() throws Exception {
    Outcome outcome =
        ImportRun.run(
            book,
            List.of(
                new ImportSource(InputSheets.TRIPS, folder.resolve("none.csv")),
                new ImportSource(InputSheets.LOSSES, book),
                new ImportSource(InputSheets.RESTOCKS, csv("r.csv", "Date,Style,Box,Count\n")),
                new ImportSource(InputSheets.STOCK, csv("s.csv", ""))),
            Optional.empty(),
            false,
            NOW,
            10);
    refused(
        outcome,
        "none.csv: there is no such file",
        "season.xlsx is a workbook",
        "has no sheet 'Restocks'",
        "s.csv is empty");
  }

  @Test
  void rejectedRowsGoToAFileThatCanBeMended() throws Exception {
    Outcome outcome =
        take(
            InputSheets.LOSSES,
            LOSSES + "T1,Worm,,Green,1,fish\nT1,Warm,,Green,3,fish\nT1,Worm,,=1+1,-2,\n");
    assertEquals(ExitCode.DONE, outcome.exitCode());
    assertEquals(2, season().losses().size());
    Path rejected = folder.resolve("in rejected.csv");
    List<String> lines = Files.readAllLines(rejected);
    assertEquals("\ufeffTrip,Style,Size,Colour,Lost,Cause,Reason", lines.get(0));
    assertTrue(lines.get(1).startsWith("T1,Warm,,Green,3,fish,"), lines.get(1));
    assertTrue(lines.get(1).contains("did you mean 'Worm'?"), lines.get(1));
    assertTrue(lines.get(2).startsWith("T1,Worm,,'=1+1,-2,,"), lines.get(2));
    assertTrue(outcome.problems().get(1).contains("in.csv line 4 rejected"), outcome.toString());
    assertTrue(
        outcome
            .summary()
            .contains("ATTENTION: 2 of 3 rows WERE LEFT OUT; each is named with its reason."),
        outcome.toString());
    Files.writeString(
        rejected, Files.readString(rejected).replace("Warm", "Worm").replace("-2", "2"));
    ok(take(InputSheets.LOSSES, rejected));
    assertEquals("=1+1", season().losses().get(3).item().colour());
    assertEquals(4, season().losses().size());
  }

  @Test
  void aMendedFileOfRejectedRowsIsNotOverwritten() throws Exception {
    csv("in rejected.csv", "mended by hand");
    take(InputSheets.LOSSES, LOSSES + "T1,Warm,,Green,1,fish\nT1,Worm,,Green,1,fish\n");
    assertEquals("mended by hand", Files.readString(folder.resolve("in rejected.csv")));
    assertTrue(files().contains("in rejected (2).csv"), files().toString());
  }

  @Test
  void lossesOnATripOfTheSameImport() throws Exception {
    Outcome outcome =
        ImportRun.run(
            book,
            List.of(
                new ImportSource(
                    InputSheets.LOSSES, csv("l.csv", LOSSES + "T8,Worm,,,1,\nT9,Worm,,,1,\n")),
                new ImportSource(
                    InputSheets.TRIPS,
                    csv("t.csv", "Trip,Date,Hours\nT8,2026-05-01,5\nT9,2026-15-01,5\n"))),
            Optional.empty(),
            false,
            NOW,
            10);
    assertEquals(
        List.of(
            folder
                + "/t.csv line 3 rejected: '2026-15-01' in Date is not a date between 1950 and"
                + " 2199; write it like 2026-05-03.",
            folder
                + "/l.csv line 3 rejected: 'T9' in Trip is in a row that was left out: line 3"
                + " of t.csv; correct that row first."),
        outcome.problems());
    assertEquals(2, season().trips().size());
  }

  @Test
  void aDryRunWritesNothing() throws Exception {
    byte[] before = Files.readAllBytes(book);
    Path file = csv("in.csv", LOSSES + "T1,Worm,,Green,1,fish\nT1,Warm,,Green,1,fish\n");
    Outcome outcome =
        ImportRun.run(
            book,
            List.of(new ImportSource(InputSheets.LOSSES, file)),
            Optional.empty(),
            true,
            NOW,
            10);
    assertEquals(ExitCode.DONE, outcome.exitCode());
    assertTrue(
        outcome.summary().contains("  line 2: T1 | Worm | Green | 1 | fish"), outcome.toString());
    assertTrue(outcome.summary().contains("Dry run: nothing was written."), outcome.toString());
    assertArrayEquals(before, Files.readAllBytes(book));
    assertEquals(List.of("in.csv", "season.xlsx"), files());
  }

  @Test
  void aLockedWorkbookStaysAsItWas() throws Exception {
    csv("~$season.xlsx", "");
    refused(
        take(InputSheets.LOSSES, LOSSES + "T1,Worm,,Green,1,fish\nT1,Warm,,,1,\n"),
        "has it open",
        "delete ~$season.xlsx");
    assertFalse(files().contains("in rejected.csv"));
  }

  private void remake(Books books) throws IOException {
    Files.delete(book);
    book = books.write(folder.resolve("season.xlsx"));
  }

  private static void table(XSSFWorkbook workbook, String area) {
    XSSFSheet sheet = workbook.getSheet("Losses");
    XSSFTable table = sheet.createTable(new AreaReference(area, SpreadsheetVersion.EXCEL2007));
    table.setName("LossRows");
    table.setDisplayName("LossRows");
    table.getCTTable().addNewAutoFilter().setRef(area);
  }

  @Test
  void tablesListsAndFormatsGoOn() throws Exception {
    remake(
        Books.season()
            .touch(
                workbook -> {
                  table(workbook, "A1:G2");
                  XSSFSheet sheet = workbook.getSheet("Losses");
                  var bold = workbook.createCellStyle();
                  bold.setDataFormat(workbook.createDataFormat().getFormat("0.000"));
                  sheet.getRow(1).getCell(4).setCellStyle(bold);
                  var helper = sheet.getDataValidationHelper();
                  var list = helper.createExplicitListConstraint(new String[] {"snag", "fish"});
                  sheet.addValidationData(
                      helper.createValidation(list, new CellRangeAddressList(1, 1, 5, 5)));
                  sheet.addValidationData(
                      helper.createValidation(list, new CellRangeAddressList(1, 99, 6, 6)));
                  var rules = sheet.getSheetConditionalFormatting();
                  rules.addConditionalFormatting(
                      new CellRangeAddress[] {CellRangeAddress.valueOf("E2:E2")},
                      rules.createConditionalFormattingRule("E2>3"));
                }));
    ok(take(InputSheets.LOSSES, LOSSES + "T1,Worm,,Green,1,fish\nT1,Worm,,Green,2,fish\n"));
    look(
        workbook -> {
          XSSFSheet sheet = workbook.getSheet("Losses");
          assertEquals("A1:G4", sheet.getTables().get(0).getCTTable().getRef());
          assertEquals("A1:G4", sheet.getTables().get(0).getCTTable().getAutoFilter().getRef());
          assertEquals("0.000", sheet.getRow(3).getCell(4).getCellStyle().getDataFormatString());
          assertEquals(
              List.of("F2:F4", "G2:G100"),
              sheet.getDataValidations().stream()
                  .map(v -> v.getRegions().getCellRangeAddress(0).formatAsString())
                  .toList());
          assertEquals(
              "E2:E4",
              sheet
                  .getSheetConditionalFormatting()
                  .getConditionalFormattingAt(0)
                  .getFormattingRanges()[0]
                  .formatAsString());
        });
  }

  @Test
  void aPlainFilterGoesOn() throws Exception {
    remake(
        Books.season()
            .touch(w -> w.getSheet("Losses").setAutoFilter(CellRangeAddress.valueOf("A1:G2"))));
    ok(take(InputSheets.LOSSES, LOSSES + "T1,Worm,,Green,1,fish\nT1,Worm,,Green,2,fish\n"));
    look(
        workbook -> {
          XSSFSheet sheet = workbook.getSheet("Losses");
          assertEquals("A1:G4", sheet.getCTWorksheet().getAutoFilter().getRef());
          assertEquals(
              "Losses!$A$1:$G$4", workbook.getName("_xlnm._FilterDatabase").getRefersToFormula());
        });
  }

  @Test
  void columnsThatAFormulaFillsAreSpokenOf() throws Exception {
    remake(
        Books.season()
            .with(
                "Losses", "Trip|Style|Size|Colour|Lost|Cause|Twice\nT1|Crank|'3/8|Red|2|snag|=2*E2")
            .touch(workbook -> table(workbook, "A1:G2")));
    Map<String, byte[]> parts = Zips.read(Files.readAllBytes(book));
    Zips.edit(
        parts,
        "xl/tables/table1.xml",
        "name=\"Twice\"/>",
        "name=\"Twice\"><calculatedColumnFormula>2*LossRows[[#This Row],[Lost]]"
            + "</calculatedColumnFormula></tableColumn>");
    Files.write(book, Zips.write(parts));
    Outcome outcome = take(InputSheets.LOSSES, LOSSES + "T1,Worm,,Green,1,fish\n");
    ok(outcome);
    String said = String.join("\n", outcome.summary());
    assertTrue(said.contains("Twice stays blank in the new rows"), said);
  }

  private static final String OWN = "Trip|Style|Size|Colour|Lost|Cause|Twice\n";
  private static final String TWO_MORE = "T1,Worm,,Green,1,fish\nT1,Worm,,Green,3,fish\n";

  private static String formula(XSSFWorkbook workbook, String cell) {
    var at = new org.apache.poi.ss.util.CellReference(cell);
    var row = workbook.getSheet("Losses").getRow(at.getRow());
    var found = row == null ? null : row.getCell(at.getCol());
    return found == null ? "" : found.toString();
  }

  @Test
  void formulasOverSeveralCellsStayBlankAndAreNamed() throws Exception {
    remake(
        Books.season()
            .with("Losses", OWN + "T1|Crank|'3/8|Red|2|snag|=E2*2\nT1|Worm||Green|4|fish|=E3*2")
            .rawSheet(
                "Losses",
                xml ->
                    xml.replaceAll(
                        "<c r=\"G(\\d)\"[^>]*><f>[^<]*</f>",
                        "<c r=\"G$1\"><f t=\"array\" ref=\"G$1\">SUM(E$1*2)</f>")));
    Outcome outcome = take(InputSheets.LOSSES, LOSSES + TWO_MORE);
    ok(outcome);
    String said = String.join("\n", outcome.summary());
    assertTrue(said.contains("Twice stays blank in the new rows"), said);
  }

  @Test
  void aFixedRangeThatWouldMissTheNewRowsStaysBlank() throws Exception {
    remake(
        Books.season()
            .with(
                "Losses",
                OWN.strip()
                    + "\nT1|Crank|'3/8|Red|2|snag|=E2/SUM(E$2:E$3)"
                    + "\nT1|Worm||Green|4|fish|=E3/SUM(E$2:E$3)"));
    Outcome outcome = take(InputSheets.LOSSES, LOSSES + TWO_MORE);
    ok(outcome);
    String said = String.join("\n", outcome.summary());
    assertTrue(said.contains("Twice stays blank in the new rows"), said);
  }

  @Test
  void formulasBesideTheDataGoOnAsIfCopiedDown() throws Exception {
    remake(
        Books.season()
            .with(
                "Losses",
                OWN.strip()
                    + "|Of all\nT1|Crank|'3/8|Red|2|snag|=E2*2|=E2/SUM(E$2:E2)"
                    + "\nT1|Worm||Green|4|fish|=E3*2|=E3/SUM(E$2:E3)"));
    Outcome outcome = take(InputSheets.LOSSES, LOSSES + TWO_MORE);
    ok(outcome);
    String said = String.join("\n", outcome.summary());
    assertTrue(said.contains("Formulas go on in the new rows: Twice, Of all."), said);
    look(
        workbook -> {
          assertEquals("E4*2", formula(workbook, "G4"));
          assertEquals("E5*2", formula(workbook, "G5"));
          assertEquals("E5/SUM(E$2:E5)", formula(workbook, "H5"));
          assertTrue(workbook.getForceFormulaRecalculation());
          assertEquals(
              6,
              workbook
                  .getCreationHelper()
                  .createFormulaEvaluator()
                  .evaluate(workbook.getSheet("Losses").getRow(4).getCell(6))
                  .getNumberValue());
        });
    assertEquals(4, season().losses().size());
    String again = String.join("\n", take(InputSheets.LOSSES, LOSSES + TWO_MORE).summary());
    assertTrue(again.contains("0 rows added"), again);
  }

  @Test
  void sharedFormulasGoOnToo() throws Exception {
    remake(
        Books.season()
            .with("Losses", OWN + "T1|Crank|'3/8|Red|2|snag|=E2*2\nT1|Worm||Green|4|fish|=E3*2"));
    Map<String, byte[]> parts = Zips.read(Files.readAllBytes(book));
    String sheet = "xl/worksheets/sheet8.xml";
    Zips.edit(parts, sheet, "<f>E2*2</f>", "<f t=\"shared\" ref=\"G2:G3\" si=\"0\">E2*2</f>");
    Zips.edit(parts, sheet, "<f>E3*2</f>", "<f t=\"shared\" si=\"0\"/>");
    Files.write(book, Zips.write(parts));
    ok(take(InputSheets.LOSSES, LOSSES + TWO_MORE));
    look(
        workbook -> {
          assertEquals("E3*2", formula(workbook, "G3"));
          assertEquals("E4*2", formula(workbook, "G4"));
          assertEquals("E5*2", formula(workbook, "G5"));
        });
  }

  /** Better no formula than a wrong one. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "T1|Crank|'3/8|Red|2|snag|=E2*2\nT1|Worm||Green|4|fish|=E3*3",
        "T1|Crank|'3/8|Red|2|snag|=E2*2\nT1|Worm||Green|4|fish|=E2*2",
        "T1|Crank|'3/8|Red|2|snag|4\nT1|Worm||Green|4|fish|=E3*2",
        "T1|Crank|'3/8|Red|2|snag|=E2*2"
      })
  void formulasThatAreNotPlainlyTheSameStayBlank(String rows) throws Exception {
    remake(Books.season().with("Losses", OWN + rows));
    Outcome outcome = take(InputSheets.LOSSES, LOSSES + TWO_MORE);
    ok(outcome);
    String said = String.join("\n", outcome.summary());
    assertTrue(said.contains("Twice stays blank in the new rows"), said);
    int first = rows.lines().mapToInt(line -> 1).sum() + 2;
    look(
        workbook -> {
          assertEquals("", formula(workbook, "G" + first));
          assertEquals("", formula(workbook, "G" + (first + 1)));
        });
  }

  @Test
  void whatStandsApartOrInTheWayIsLeftAlone() throws Exception {
    remake(
        Books.season()
            .with(
                "Losses",
                OWN.strip()
                    + "||Apart\nT1|Crank|'3/8|Red|2|snag|=E2*2||=E2*5"
                    + "\nT1|Worm||Green|4|fish|=E3*2||=E3*5\n||||||=9"));
    ok(take(InputSheets.LOSSES, LOSSES + TWO_MORE));
    look(
        workbook -> {
          assertEquals("9", formula(workbook, "G4"));
          assertEquals("E5*2", formula(workbook, "G5"));
          assertEquals("", formula(workbook, "I4"));
          assertEquals("", formula(workbook, "I5"));
        });
  }

  @Test
  void aFormulaOverSeveralCellsIsNotCopied() throws Exception {
    remake(
        Books.season()
            .with("Losses", OWN + "T1|Crank|'3/8|Red|2|snag|=E2*2\nT1|Worm||Green|4|fish|=E3*2"));
    Map<String, byte[]> parts = Zips.read(Files.readAllBytes(book));
    String sheet = "xl/worksheets/sheet8.xml";
    Zips.edit(parts, sheet, "<f>E3*2</f>", "<f t=\"array\" ref=\"G3\">E3*2</f>");
    Files.write(book, Zips.write(parts));
    ok(take(InputSheets.LOSSES, LOSSES + TWO_MORE));
    look(workbook -> assertEquals("", formula(workbook, "G4")));
  }

  /** What other programs may write (ECMA-376 part 1, 18.3.1): all of it is optional there. */
  @Test
  void prefixesAndPlacesLeftOutDoNoHarm() throws Exception {
    Map<String, byte[]> parts = Zips.read(Files.readAllBytes(book));
    String sheet = "xl/worksheets/sheet8.xml";
    String text =
        Zips.text(parts, sheet)
            .replaceAll("<dimension [^>]*/>", "")
            .replaceAll("<row r=\"\\d+\"", "<row")
            .replaceAll("<c r=\"[A-Z]+\\d+\"", "<c")
            .replace(
                "</sheetData>",
                "<row r=\"10\"><c r=\"I10\"><f t=\"shared\" ref=\"I10:I11\" si=\"0\">E10*2</f>"
                    + "<v>0</v></c></row><row><c r=\"I11\"><f t=\"shared\" si=\"0\"/><v>0</v></c>"
                    + "</row></sheetData>")
            .replaceAll("<(/?)([A-Za-z])", "<$1x:$2")
            .replace("xmlns=", "xmlns:x=");
    parts.put(sheet, Zips.utf8(text));
    Files.write(book, Zips.write(parts));
    ok(take(InputSheets.LOSSES, LOSSES + "T1,Worm,,Green,1,fish\nT1,Worm,,Green,3,fish\n"));
    look(
        workbook -> {
          XSSFSheet losses = workbook.getSheet("Losses");
          assertEquals("Crank", losses.getRow(1).getCell(1).getStringCellValue());
          assertEquals(3, losses.getRow(3).getCell(4).getNumericCellValue());
          assertEquals("E11*2", losses.getRow(10).getCell(8).getCellFormula());
        });
    assertEquals(3, season().losses().size());
  }

  @Test
  void blankRowsOfATableAreFilled() throws Exception {
    remake(Books.season().touch(workbook -> table(workbook, "A1:G9")));
    ok(take(InputSheets.LOSSES, LOSSES + "T1,Worm,,Green,1,fish\n"));
    look(
        workbook -> {
          XSSFSheet sheet = workbook.getSheet("Losses");
          assertEquals("A1:G9", sheet.getTables().get(0).getCTTable().getRef());
          assertEquals("Worm", sheet.getRow(2).getCell(1).getStringCellValue());
        });
  }

  @Test
  void datesAreRealDatesWhereTheColumnShowsDates() throws Exception {
    remake(
        Books.season()
            .touch(workbook -> workbook.getCTWorkbook().getWorkbookPr().setDate1904(true))
            .with("Trips", "Trip|Date|Hours\nT1|2026-03-01|8"));
    ok(take(InputSheets.TRIPS, "Trip,Date,Hours\nT2,2026-04-05,6\n"));
    look(
        workbook -> {
          var cell = workbook.getSheet("Trips").getRow(2).getCell(1);
          assertEquals("yyyy-mm-dd", cell.getCellStyle().getDataFormatString());
          // ECMA-376 part 1, section 18.17.4.1: day 0 is 1904-01-01
          assertEquals(
              java.time.temporal.ChronoUnit.DAYS.between(
                  LocalDate.of(1904, 1, 1), LocalDate.of(2026, 4, 5)),
              cell.getNumericCellValue());
        });
    assertEquals(
        LocalDate.of(2026, 4, 5),
        season().trips().stream()
            .filter(t -> t.id().equals("T2"))
            .findFirst()
            .orElseThrow()
            .date());
  }

  @Test
  void somethingBelowTheTableIsInTheWay() throws Exception {
    remake(Books.season().plus("Losses", "\nTotal||||2"));
    refused(
        take(InputSheets.LOSSES, LOSSES + "T1,Worm,,Green,1,fish\n"), "Row 4", "Total", "Style");
    remake(
        Books.season()
            .touch(
                workbook ->
                    workbook
                        .getSheet("Losses")
                        .addMergedRegion(CellRangeAddress.valueOf("A3:C3"))));
    refused(take(InputSheets.LOSSES, LOSSES + "T1,Worm,,Green,1,fish\n"), "merged cells (A3:C3)");
    remake(Books.season().touch(workbook -> workbook.getSheet("Losses").protectSheet("x")));
    refused(take(InputSheets.LOSSES, LOSSES + "T1,Worm,,Green,1,fish\n"), "is protected");
    remake(
        Books.season()
            .with("Losses", "Trip|Style|Remark|Lost|Size|Colour|Cause\nT1|Crank|ok|2\n||footnote"));
    refused(take(InputSheets.LOSSES, LOSSES + "T1,Worm,,Green,1,fish\n"), "something in C3");
  }

  @Test
  void formulasBesideTheTableStayAndAreCalculatedAnew() throws Exception {
    remake(
        Books.season()
            .with(
                "Losses",
                "Trip|Style|Size|Colour|Lost|Cause||Sum\nT1|Crank|'3/8|Red|2|snag||=SUM(E2:E99)"));
    byte[] before = Files.readAllBytes(book);
    ok(take(InputSheets.LOSSES, LOSSES + "T1,Worm,,Green,1,fish\n"));
    assertEquals(
        List.of("xl/worksheets/sheet8.xml has other bytes"),
        PartComparison.differences(before, Files.readAllBytes(book), List.of()));
    look(
        workbook -> {
          assertTrue(workbook.getForceFormulaRecalculation());
          assertEquals(
              "SUM(E2:E99)", workbook.getSheet("Losses").getRow(1).getCell(7).getCellFormula());
        });
  }

  @Test
  void whatLooksLikeAnEscapeStaysText() throws Exception {
    ok(take(InputSheets.LOSSES, LOSSES + "T1,Worm,,_x0041_ <&>,1,fish\n"));
    assertEquals("_x0041_ <&>", season().losses().get(1).item().colour());
  }

  @Test
  void unitsOfTheFileAreThoseOfItsHeader() throws Exception {
    remake(
        Books.season()
            .with(
                "Stock",
                "Style|Size|Colour|Box|Count|Weight each (oz)\nCrank|'3/8|Red|Tray A|6|0.5"));
    ok(
        take(
            InputSheets.STOCK,
            "Style,Box,Count,Weight each (g)\nWorm,Shelf,1,28.349523125\nWorm,Tray A,1,1/2 oz\n"));
    assertEquals(1.0, season().stock().get(1).weightEach().orElseThrow().in(MassUnit.OUNCE), 1e-4);
    assertEquals(0.5, season().stock().get(2).weightEach().orElseThrow().in(MassUnit.OUNCE), 1e-4);
  }

  @Test
  void openpyxlLoadsIt() throws Exception {
    assumeTrue(Programs.hasPythonModule("openpyxl"), "openpyxl is not installed");
    remake(Books.season().touch(workbook -> table(workbook, "A1:G2")));
    ok(take(InputSheets.LOSSES, LOSSES + "T1,Worm,,<Green & white>,1,fish\n"));
    String script =
        "import openpyxl,sys\nw=openpyxl.load_workbook(sys.argv[1])['Losses']\n"
            + "assert [c.value for c in w[3]][:6]==['T1','Worm',None,'<Green & white>',1,'fish'],"
            + "[c.value for c in w[3]]\nassert w.tables['LossRows'].ref=='A1:G3'\n";
    assertEquals(
        0,
        Programs.run(
            folder, 2, TimeUnit.MINUTES, List.of(Programs.PYTHON, "-c", script, book.toString())));
  }

  private static final String NO_ROW = "No row of ";

  /** One date that no other order allows proves the order of all. */
  @Test
  void aDateProvesTheOrderOfItsFile() throws Exception {
    Outcome outcome =
        take(
            InputSheets.TRIPS,
            "Trip name,Day,Hours fished,Notes\nA,05/03/2026,4,x\nB,27/11/2025,5,\n");
    ok(outcome);
    assertTrue(
        outcome.summary().toString().contains("as day-month-year, as '27/11/2025' proves"),
        outcome.toString());
    assertTrue(
        outcome.summary().toString().contains("'Hours fished' as Hours"), outcome.toString());
    assertEquals(
        List.of(LocalDate.of(2026, 3, 1), LocalDate.of(2026, 3, 5), LocalDate.of(2025, 11, 27)),
        season().trips().stream().map(Trip::date).toList());
  }

  @Test
  void withoutProofTheOrderIsAskedForAndNothingIsWritten() throws Exception {
    byte[] before = Files.readAllBytes(book);
    String trips = "Trip,Date,Hours\nA,05/03/2026,4\nB,06/03/2026,5\n";
    refused(take(InputSheets.TRIPS, trips), NO_ROW, "--dates dmy or --dates mdy");
    refused(
        take(InputSheets.TRIPS, trips + "C,27/03/2026,4\nD,03/27/2026,4\n"),
        NO_ROW,
        "--dates dmy or --dates mdy");
    assertArrayEquals(before, Files.readAllBytes(book));
    Path file = csv("asked.csv", "Trip,Date,Hours\nA,05.03.26,4\nB,06.03.2026,5\n");
    ok(
        ImportRun.run(
            book,
            List.of(new ImportSource(InputSheets.TRIPS, file)),
            Optional.of(DateOrder.DMY),
            false,
            NOW,
            10));
    assertEquals(LocalDate.of(2026, 3, 5), season().trips().get(1).date());
  }

  /** Losses may name a trip by its date, written as in the rest of the file. */
  @Test
  void tripsGoByDatesInFiguresToo() throws Exception {
    Path file = csv("asked.csv", "Trip,Lure,How many\n3/1/2026,Worm,2 pcs\n");
    Outcome outcome =
        ImportRun.run(
            book,
            List.of(new ImportSource(InputSheets.LOSSES, file)),
            Optional.of(DateOrder.MDY),
            false,
            NOW,
            10);
    ok(outcome);
    assertEquals("T1", season().losses().get(1).trip());
    assertTrue(
        outcome.summary().toString().contains("'2 pcs' in Lost has a word after the number"),
        outcome.toString());
  }

  /** The sheet's own names come first; another column may then be anything. */
  @Test
  void ownNamesBeatOthers() throws Exception {
    ok(take(InputSheets.LOSSES, "Bait,Number,Trip,Style,Lost\nlive,77,T1,Worm,2\n"));
    assertEquals("Worm", season().losses().get(1).item().style());
    assertEquals(2, season().losses().get(1).lostPieces());
  }

  @Test
  void aFileWithoutAUsableRowIsRefused() throws Exception {
    refused(take(InputSheets.LOSSES, LOSSES + "T1,Wrm,,Green,1,fish\n"), NO_ROW, "'Worm'?");
    assertEquals(List.of("in.csv", "season.xlsx"), files());
    Outcome outcome = take(InputSheets.LOSSES, LOSSES + "T1,Wrm,,Green,1,\nT1,Worm,,Green,1,\n");
    assertEquals(ExitCode.DONE, outcome.exitCode());
    assertTrue(outcome.problems().get(0).endsWith("did you mean 'Worm'?"), outcome.toString());
  }

  @Test
  void aSecondTripOfANameIsExplained() throws Exception {
    Outcome outcome =
        take(InputSheets.TRIPS, "Trip,Date,Hours\nt1,2026-05-20,4\nT2,2026-05-21,4\n");
    assertEquals(
        List.of(
            folder
                + "/in.csv line 2 rejected: the name 'T1' in Trip is that of row 2, a trip of"
                + " 2026-03-01; rename this one, for example to 'T1 2026-05-20', in its"
                + " losses and style hours too."),
        outcome.problems());
  }
}
