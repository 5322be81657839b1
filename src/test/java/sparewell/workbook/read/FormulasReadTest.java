package sparewell.workbook.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sparewell.workbook.read.AmountsReadTest.stock;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.finding.Code;
import sparewell.season.StockRow;
import sparewell.workbook.Books;

/** Formulas, error values, and cells as other programs write them. */
class FormulasReadTest {
  @Test
  void formulasWithAStoredValueAreReadFromIt() {
    Reading reading =
        Reading.of(
            Books.season()
                .rawSheet(
                    "Stock",
                    xml ->
                        xml.replaceAll(
                            "<c r=\"E2\"[^>]*><v>[^<]*</v>", "<c r=\"E2\"><f>1/0</f><v>9</v>")));
    assertEquals(List.of(), reading.lines());
    assertEquals(9, reading.season().stock().get(0).countedPieces());
  }

  @Test
  void formulasWithoutAStoredValueAreComputed() {
    Reading reading = stock("=SUM(1,2)*2");
    assertEquals(6, reading.season().stock().get(0).countedPieces());
    assertEquals(
        List.of("warning Stock C2 FORMULA_COMPUTED", "note Losses  NO_ROWS"), reading.lines());
    assertEquals("computed: 6", reading.findings().get(0).done());
  }

  @Test
  void formulasMayReachIntoOtherSheets() {
    Reading reading =
        Reading.of(
            Books.season()
                .with("Diary", "7")
                .with("Stock", "Style|Box|Count\n=\"Cr\"&\"ank\"|Tray A|=Diary!A1+1"));
    assertEquals("Crank", reading.season().stock().get(0).item().style());
    assertEquals(8, reading.season().stock().get(0).countedPieces());
  }

  @ParameterizedTest
  @ValueSource(strings = {"=RANDBETWEEN(1,6)", "=C2+1"})
  void formulasThatChangeByThemselvesOrInACircleAreBlank(String formula) {
    assertEquals(
        List.of(
            "warning Stock C2 FORMULA_BLANK",
            "error Stock C2 REQUIRED_BLANK",
            "note Losses  NO_ROWS"),
        stock(formula).lines());
  }

  @Test
  void aFormulaForAnErrorIsSaid() {
    assertEquals(
        "the cell in Count shows the error #DIV/0!; correct its formula",
        stock("=1/0").only(Code.ERROR_VALUE).message());
  }

  @ParameterizedTest
  @ValueSource(strings = {"#N/A", "#SPILL!", "#CALC!", "#REF!"})
  void errorValuesAreFindings(String error) {
    Reading reading =
        Reading.of(
            Books.season()
                .rawSheet(
                    "Stock",
                    xml ->
                        xml.replaceAll(
                            "<c r=\"E2\"[^>]*><v>[^<]*</v>",
                            "<c r=\"E2\" t=\"e\"><v>" + error + "</v>")));
    assertEquals(List.of("error Stock E2 ERROR_VALUE"), reading.lines());
    assertTrue(reading.findings().get(0).message().contains(error));
  }

  @Test
  void damagedCellsAreFindings() {
    Reading reading =
        Reading.of(
            Books.season()
                .rawSheet(
                    "Stock",
                    xml ->
                        xml.replaceAll(
                                "<c r=\"E2\"[^>]*><v>[^<]*</v>", "<c r=\"E2\" t=\"s\"><v>99999</v>")
                            .replaceAll("<c r=\"E3\"[^>]*><v>[^<]*</v>", "<c r=\"E3\"><v>1E999</v>")
                            .replaceAll(
                                "<c r=\"E4\"[^>]*><v>[^<]*</v>", "<c r=\"E4\"><v>four</v>")));
    assertEquals(
        List.of(
            "error Stock E2 DAMAGED_CELL",
            "error Stock E3 DAMAGED_CELL",
            "error Stock E4 DAMAGED_CELL"),
        reading.lines());
  }

  @Test
  void unusualCellsAreRead() {
    Reading reading =
        Reading.of(
            Books.season()
                .rawSheet(
                    "Stock",
                    xml ->
                        xml.replace(
                            "</sheetData>",
                            "<row><c t=\"inlineStr\"><is><r><t>Cra</t></r><rPh sb=\"0\" eb=\"1\"><t>xx"
                                + "</t></rPh><r><t>nk</t></r></is></c><c/>"
                                + "<c t=\"str\"><v>Blue_x0007_</v></c>"
                                + "<c t=\"inlineStr\"><is><t>Tray_x0020_A</t></is></c>"
                                + "<c><v>3</v></c>"
                                + "<c t=\"d\"><v>2026-02-03T00:00:00</v></c></row></sheetData>")));
    StockRow row = reading.season().stock().get(3);
    assertEquals("Crank", row.item().style());
    assertEquals("Blue", row.item().colour());
    assertEquals("Tray A", row.place().name());
    assertEquals(LocalDate.of(2026, 2, 3), row.countedOn().orElseThrow());
    assertEquals(5, row.origin().row());
    assertEquals(List.of("warning Stock C5 CONTROL_CHARACTERS"), reading.lines());
  }

  @Test
  void manyFormattedBlankCellsAreSkipped() {
    StringBuilder blank = new StringBuilder();
    for (int row = 10; row < 200_000; row++) {
      blank.append("<row r=\"").append(row).append("\"><c r=\"A").append(row);
      blank.append("\" s=\"0\"/><c r=\"B").append(row).append("\" s=\"0\"/></row>");
    }
    Reading reading =
        Reading.of(
            Books.season()
                .rawSheet("Stock", xml -> xml.replace("</sheetData>", blank + "</sheetData>")));
    assertEquals(List.of(), reading.lines());
    assertEquals(3, reading.season().stock().size());
  }
}
