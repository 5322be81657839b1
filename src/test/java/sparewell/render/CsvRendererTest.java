package sparewell.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.Table;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.MassUnit;
import sparewell.units.UnitSystem;

class CsvRendererTest {
  private static Table<List<String>> texts(List<List<String>> rows) {
    int columns = rows.get(0).size();
    List<Column<List<String>>> all = new java.util.ArrayList<>();
    for (int i = 0; i < columns; i++) {
      int at = i;
      all.add(Format.TEXT.column("c" + i, "C" + i, "", row -> row.get(at)));
    }
    return new Table<>("t.csv", "", all, rows, "");
  }

  private static String one(Format format, Object value, UnitSystem units) {
    Table<Object> table =
        new Table<>(
            "t.csv", "", List.of(format.column("v", "V", "", row -> row)), List.of(value), "");
    return CsvRenderer.text(table, units).split("\r\n", -1)[1];
  }

  // RFC 4180 section 2, rules 1 to 7: CRLF after each record, header first, and fields with line
  // breaks, quotes or commas in quotes, a quote doubled; the values are those of its examples.
  @Test
  void followsTheExamplesOfRfc4180() {
    Table<List<String>> table =
        texts(
            List.of(
                List.of("aaa", "bbb", "ccc"),
                List.of("zzz", "yyy", "xxx"),
                List.of("aaa", "b \r\nbb", "ccc"),
                List.of("aaa", "b\"bb", "ccc"),
                List.of("a,a", "", "ccc")));
    assertEquals(
        "c0,c1,c2\r\n"
            + "aaa,bbb,ccc\r\n"
            + "zzz,yyy,xxx\r\n"
            + "aaa,\"b \r\nbb\",ccc\r\n"
            + "aaa,\"b\"\"bb\",ccc\r\n"
            + "\"a,a\",,ccc\r\n",
        CsvRenderer.text(table, UnitSystem.US));
  }

  @Test
  void whatIsWrittenReadsBackTheSame() throws IOException {
    List<List<String>> rows =
        List.of(
            List.of("líne\nfeed", "“quoted”", " blanks "),
            List.of("#hash", "日本", "a\tb"),
            List.of("", "x", "\"\""));
    String text = CsvRenderer.text(texts(rows), UnitSystem.US);
    List<CSVRecord> read = CSVFormat.RFC4180.parse(new StringReader(text)).getRecords();
    for (int i = 0; i < rows.size(); i++) {
      assertEquals(rows.get(i), Arrays.asList(read.get(i + 1).values()));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"=1+1", "+SUM(A1)", "-A1", "@x", "\tx", "\rx", "-", "+-3", "=5", "-5 kg"})
  void textThatLooksLikeAFormulaGetsAnApostrophe(String risky) {
    assertEquals("'" + risky, CsvRenderer.neutral(risky));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"-5", "+3.25", "-.5", "-1e-5", "plain", "5-3", "a=b", " =x", "'=x", "3/8"})
  void otherTextStaysAsItIs(String harmless) {
    assertEquals(harmless, CsvRenderer.neutral(harmless));
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          COUNT, 12, 12
          MONEY, 12.5, 12.5
          MONEY, 12.005, 12
          MONEY, 1200000, 1200000
          MASS, 0.1, 0.1
          MASS, 1234567.12345678, 1234567.12346
          MASS, 1e-7, 0
          MASS, -1e-9, 0
          NUMBER, 1e10, 10000000000
          NUMBER, 0.000000014, 0.00000001
          PROBABILITY, 1.23456e-9, 0.00000000123
          PROBABILITY, 1e-17, 0
          PROBABILITY, 0.123456789, 0.12345679
          PROBABILITY, 1, 1
          PROBABILITY, 0, 0
          PERCENT, 33.3333333333, 33.333333
          """)
  void numbersHaveFewDecimalsAndNoExponent(Format format, double value, String written) {
    assertEquals(written, one(format, value, UnitSystem.US));
  }

  @Test
  void negativeNothingIsNothing() {
    assertEquals("0", one(Format.NUMBER, -0.0, UnitSystem.US));
  }

  @Test
  void moneyKeepsNoMoreThanCents() {
    assertEquals("12.35", one(Format.MONEY, new BigDecimal("12.350"), UnitSystem.US));
  }

  @Test
  void whatIsNotKnownIsEmpty() {
    assertEquals("", one(Format.NUMBER, OptionalDouble.empty(), UnitSystem.US));
    assertEquals("", one(Format.MONEY, Optional.empty(), UnitSystem.US));
    assertEquals("", one(Format.TEXT, "", UnitSystem.US));
  }

  @Test
  void datesAreIso() {
    assertEquals("2026-02-03", one(Format.DATE, LocalDate.of(2026, 2, 3), UnitSystem.US));
  }

  @Test
  void numbersThatAreNoneAreNeverWritten() {
    assertThrows(
        IllegalArgumentException.class, () -> one(Format.NUMBER, Double.NaN, UnitSystem.US));
    assertThrows(
        IllegalArgumentException.class,
        () -> one(Format.NUMBER, Double.POSITIVE_INFINITY, UnitSystem.US));
  }

  // 1 lb = 0.45359237 kg, 1 in = 2.54 cm: NIST SP 811 appendix B.
  @ParameterizedTest
  @CsvSource({
    "MASS, US, v_lb, 1", "MASS, METRIC, v_kg, 0.45359", "LENGTH, US, v_in, 10",
    "LENGTH, METRIC, v_cm, 25.4", "MOMENT, US, v_lb_in, 1", "MOMENT, METRIC, v_kg_cm, 1.1521"
  })
  void unitsStandInTheName(Format format, UnitSystem units, String name, String written) {
    Object value =
        switch (format) {
          case MASS -> Mass.of(1, MassUnit.POUND);
          case LENGTH -> Length.of(10, LengthUnit.INCH);
          default -> 0.45359237 * 0.0254;
        };
    Table<Object> table =
        new Table<>(
            "t.csv", "", List.of(format.column("v", "V", "", row -> row)), List.of(value), "");
    assertEquals(name + "\r\n" + written + "\r\n", CsvRenderer.text(table, units));
  }

  @Test
  void onlyColumnsOfTheCsvAreInIt() {
    assertEquals(
        "shelf,pieces,mass_kg,run_out_chance,ratio,cost,checked,full",
        CsvRenderer.text(Sample.TABLE, UnitSystem.METRIC).split("\r\n", 2)[0]);
  }

  @Test
  void aTableWithoutRowsIsItsHeader() {
    assertTrue(CsvRenderer.text(Sample.EMPTY, UnitSystem.US).endsWith("full\r\n"));
  }
}
