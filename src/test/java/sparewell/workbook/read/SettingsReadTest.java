package sparewell.workbook.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sparewell.finding.Code;
import sparewell.season.Settings;
import sparewell.units.LengthUnit;
import sparewell.units.UnitSystem;
import sparewell.workbook.Books;
import sparewell.workbook.InputSheets;
import sparewell.workbook.ReadOptions;
import sparewell.workbook.TypedChance;

class SettingsReadTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 7, 15);

  private static Reading with(String rows) {
    return Reading.with("Settings", "Setting|Value|Note" + rows);
  }

  /** The defaults of the workbook contract. */
  @Test
  void allSettingsHaveDefaults() {
    for (Reading reading :
        List.of(
            Reading.of(Books.season().without("Settings")), with(""), with("\nBudget||later"))) {
      Settings s = reading.season().settings();
      assertEquals(List.of(), reading.lines());
      assertEquals(UnitSystem.US, s.units());
      assertEquals(TODAY, s.asOf());
      assertEquals(3, s.carryAtLeast());
      assertEquals(0.95, s.chanceWantedProbability());
      assertEquals(24, s.planningHours());
      assertEquals(3, s.planningDays());
      assertEquals(Optional.empty(), s.budget());
      assertEquals("USD", s.currency());
      assertEquals(0.85, s.fillFactorShare());
      assertTrue(s.sideTolerance().isEmpty());
      assertEquals(12, s.idleAfterMonths());
      assertTrue(s.halfLifeMonths().isEmpty());
      assertEquals(63, s.labels().width().in(LengthUnit.MILLIMETRE), 1e-9);
      assertEquals(34, s.labels().height().in(LengthUnit.MILLIMETRE), 1e-9);
      assertEquals(3, s.labels().across());
      assertEquals(8, s.labels().down());
    }
  }

  @Test
  void allSettingsAreRead() {
    Reading reading =
        with(
            "\nUNITS|Metric\nas-of|2026-06-30\nCarry at least|0\nChance wanted|0.9\n"
                + "Planning hours|30\nPlanning days|4\nBudget|'$120.50\nCurrency|eur\n"
                + "Fill factor|'80%\nSide tolerance|50\nIdle after|6\nhalf life (months)|18\n"
                + "Label width (mm)|70\nLabel height|3.7\nLabels across|2\nLabels down|7");
    assertEquals(List.of(), reading.lines());
    Settings s = reading.season().settings();
    assertEquals(UnitSystem.METRIC, s.units());
    assertEquals(LocalDate.of(2026, 6, 30), s.asOf());
    assertEquals(0, s.carryAtLeast());
    assertEquals(0.9, s.chanceWantedProbability());
    assertEquals(30, s.planningHours());
    assertEquals(4, s.planningDays());
    assertEquals(new BigDecimal("120.50"), s.budget().orElseThrow());
    assertEquals("EUR", s.currency());
    assertEquals(0.8, s.fillFactorShare(), 1e-12);
    assertEquals(0.5, s.sideTolerance().orElseThrow().kgM(), 1e-12);
    assertEquals(6, s.idleAfterMonths());
    assertEquals(18, s.halfLifeMonths().orElseThrow());
    assertEquals(70, s.labels().width().in(LengthUnit.MILLIMETRE), 1e-9);
    assertEquals(37, s.labels().height().in(LengthUnit.MILLIMETRE), 1e-9);
    assertEquals(2, s.labels().across());
    assertEquals(7, s.labels().down());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "Units|imperial|NOT_A_CHOICE",
        "As of|'30.06.|NOT_A_DATE",
        "Carry at least|2.5|NOT_WHOLE",
        "Carry at least|-1|NEGATIVE",
        "Chance wanted|1|BAD_CHANCE",
        "Planning hours|0|OUT_OF_RANGE",
        "Planning days|-3|NOT_POSITIVE",
        "Budget|lots|NOT_A_NUMBER",
        "Currency|dollars|OUT_OF_RANGE",
        "Fill factor|1.5|OUT_OF_RANGE",
        "Fill factor|0|OUT_OF_RANGE",
        "Side tolerance|-1|NOT_A_NUMBER",
        "Side tolerance|'5 furlongs|UNKNOWN_UNIT",
        "Idle after (months)|0|OUT_OF_RANGE",
        "Half-life (months)|never|NOT_A_NUMBER",
        "Label width|0|NOT_POSITIVE",
        "Labels down|0|OUT_OF_RANGE",
        "Label width (mm)|300|OUT_OF_RANGE",
        "Label height (mm)|0.1|OUT_OF_RANGE",
        "Carry at least|5000|OUT_OF_RANGE",
        "Planning hours|20000|OUT_OF_RANGE",
        "Budget|5000000000|TOO_LARGE"
      })
  void aBadSettingTakesItsDefault(String setting, String value, Code code) {
    Reading reading = with("\n" + setting + "|" + value);
    Code found = reading.findings().get(0).code();
    assertEquals(1, reading.findings().size());
    assertEquals(
        setting.equals("Side tolerance") && value.equals("-1") ? Code.NEGATIVE : code, found);
    assertEquals("B2", reading.findings().get(0).at().reference());
    assertEquals("error", reading.findings().get(0).severity().word());
    assertEquals(
        Reading.of(Books.season().without("Settings")).season().settings(),
        reading.season().settings());
  }

  @Test
  void anUnknownSettingIsRemarked() {
    Reading reading = with("\nCarry at lest|5\nColour of boat|red");
    assertEquals(
        List.of("warning Settings A2 UNKNOWN_SETTING", "warning Settings A3 UNKNOWN_SETTING"),
        reading.lines());
    assertEquals(
        "there is no 'Carry at lest' in Settings; did you mean 'Carry at least'?",
        reading.findings().get(0).message());
    assertEquals(3, reading.season().settings().carryAtLeast());
  }

  @Test
  void theFirstOfTwoEqualSettingsCounts() {
    Reading reading = with("\nPlanning hours|10\nPLANNING HOURS|20");
    assertEquals(10, reading.season().settings().planningHours());
    assertEquals(List.of("error Settings A3 DUPLICATE"), reading.lines());
  }

  @Test
  void wordsForTheDefaultAreUnderstood() {
    Reading reading = with("\nBudget|none\nHalf-life (months)|None\nAs of|today\nUnits|us");
    assertEquals(List.of(), reading.lines());
  }

  @Test
  void theCommandLineBeatsTheWorkbook() {
    ReadOptions options =
        new ReadOptions(
            TODAY,
            Optional.of(LocalDate.of(2026, 5, 1)),
            Optional.of(new BigDecimal("50")),
            TypedChance.of(90));
    Reading reading =
        Reading.of(
            Books.season()
                .with("Settings", "Setting|Value\nAs of|2026-06-30\nBudget|10\nChance wanted|0.8"),
            options);
    Settings s = reading.season().settings();
    assertEquals(LocalDate.of(2026, 5, 1), s.asOf());
    assertEquals(new BigDecimal("50"), s.budget().orElseThrow());
    assertEquals(0.9, s.chanceWantedProbability());
    assertTrue(s.chanceFromCommandLine());
    assertEquals("read as 0.9", reading.only(Code.CHANCE_OPTION_PERCENT).done());
  }

  @Test
  void labelsWiderThanPaperAreFewer() {
    Reading reading = with("\nLabel width|'105 mm\nLabels across|3");
    assertEquals(2, reading.season().settings().labels().across());
    assertEquals("B3", reading.only(Code.LABELS_WIDER_THAN_PAPER).at().reference());
    assertEquals(3, with("").season().settings().labels().across());
  }

  @Test
  void everyDeclaredRowHasAStandard() {
    for (var row : InputSheets.SETTING_ROWS.columns()) {
      assertTrue(!row.standard().isEmpty() && !row.meaning().isEmpty(), row.name());
    }
  }
}
