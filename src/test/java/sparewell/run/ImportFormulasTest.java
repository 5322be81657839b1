package sparewell.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Map;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.ooxml.Zips;
import sparewell.save.PartComparison;
import sparewell.workbook.Books;
import sparewell.workbook.InputSheets;

/** Formulas beside the data are copied into new rows only where that is certain. */
class ImportFormulasTest extends ImportFixture {
  @Test
  void columnsThatAFormulaFillsAreSpokenOf() throws Exception {
    remake(
        Books.season()
            .with(
                "Losses", "Trip|Style|Size|Colour|Lost|Cause|Twice\nT1|Crank|'3/8|Red|2|snag|=2*E2")
            .touch(workbook -> ImportTablesTest.table(workbook, "A1:G2")));
    Map<String, byte[]> parts = Zips.read(Files.readAllBytes(book));
    Zips.edit(
        parts,
        "xl/tables/table1.xml",
        "name=\"Twice\"/>",
        "name=\"Twice\"><calculatedColumnFormula>2*LossRows[[#This Row],[Lost]]"
            + "</calculatedColumnFormula></tableColumn>");
    Files.write(book, Zips.write(parts));
    assertTwiceStaysBlank(GREEN_WORM);
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
    assertTwiceStaysBlank(LOSSES + TWO_MORE);
    look(workbook -> assertEquals("", formula(workbook, "G4")));
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
    Outcome oneBad = take(InputSheets.LOSSES, LOSSES + TWO_MORE + "T9,Worm,,Green,1,fish\n");
    assertFalse(
        oneBad.summary().toString().contains("Formulas go on"), "the only new one is no row");
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
        "T1|Crank|'3/8|Red|2|snag|=E2*2",
        "T1|Crank|\'3/8|Red|2|snag|=E2/SUM(E$2:E$3)\nT1|Worm||Green|4|fish|=E3/SUM(E$2:E$3)"
      })
  void formulasThatAreNotPlainlyTheSameStayBlank(String rows) throws Exception {
    remake(Books.season().with("Losses", OWN + rows));
    assertTwiceStaysBlank(LOSSES + TWO_MORE);
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
  void formulasBesideTheTableStayAndAreCalculatedAnew() throws Exception {
    remake(
        Books.season()
            .with(
                "Losses",
                "Trip|Style|Size|Colour|Lost|Cause||Sum\nT1|Crank|'3/8|Red|2|snag||=SUM(E2:E99)"));
    byte[] before = Files.readAllBytes(book);
    ok(take(InputSheets.LOSSES, GREEN_WORM));
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

  private void assertTwiceStaysBlank(String losses) throws IOException {
    Outcome outcome = take(InputSheets.LOSSES, losses);
    ok(outcome);
    String said = String.join("\n", outcome.summary());
    assertTrue(said.contains("Twice stays blank in the new rows"), said);
  }
}
