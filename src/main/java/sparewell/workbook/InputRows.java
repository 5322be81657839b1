package sparewell.workbook;

import java.time.LocalDate;
import java.util.List;
import sparewell.workbook.InputColumn.Kind;

/**
 * Declarations of the rows of the sheets Settings and Boat: name in the first column, kind,
 * standard, meaning and range of the value. The standard is parsed like a typed value; a word such
 * as 'none' stands for no value.
 */
public final class InputRows {
  private static final LocalDate EARLIEST_DATE = LocalDate.of(1950, 1, 1);
  private static final LocalDate LATEST_DATE = LocalDate.of(2199, 12, 31);

  public static final InputColumn UNITS =
      row("Units", Kind.CHOICE, "us", "us: oz, lb, in. metric: g, kg, cm.").oneOf("us", "metric");
  public static final InputColumn AS_OF = row("As of", Kind.DATE, "today", "Date of the analysis.");
  public static final InputColumn CARRY_AT_LEAST =
      row("Carry at least", Kind.PIECES, "3", "Pieces of every item to keep aboard.")
          .within(0, 1000, "pieces");
  public static final InputColumn STOCK_COUNTED_ON =
      row(
          "Stock counted on",
          Kind.DATE,
          "none",
          "Date of the count of Stock rows whose Counted on is blank.");
  public static final InputColumn CHANCE_WANTED =
      row("Chance wanted", Kind.CHANCE, "0.95", "Wanted chance that an item does not run out.");
  public static final InputColumn PLANNING_HOURS =
      row(
              "Planning hours",
              Kind.HOURS,
              "24",
              "Hours until you can buy again, where no event lies ahead.")
          .within(0.1, 10_000, "hours");
  public static final InputColumn PLANNING_DAYS =
      row("Planning days", Kind.DAYS, "3", "Days those hours are spread over.")
          .within(0.1, 1000, "days");
  public static final InputColumn LEAD_TIME =
      row("Lead time (days)", Kind.DAYS, "7", "Days from an order until it is aboard.")
          .alias("Lead time")
          .within(0, 365, "days");
  public static final InputColumn BUDGET =
      row(
              "Budget",
              Kind.MONEY,
              "none",
              "Money for the buy list; lower it when you have spent of it.")
          .within(0, 1e9, "");
  public static final InputColumn CURRENCY =
      row("Currency", Kind.TEXT, "USD", "Three-letter code of the currency (ISO 4217).");
  public static final InputColumn FILL_FACTOR =
      row("Fill factor", Kind.NUMBER, "0.85", "Share of a compartment's volume to use.")
          .within(0.01, 1, "");
  public static final InputColumn SIDE_TOLERANCE =
      row(
              "Side tolerance",
              Kind.NUMBER,
              "a tenth of the tackle's weight at 12 in (30 cm), 60 lb in (70 kg cm) at least",
              "Side moment of the tackle to allow, in lb in (kg cm where metric).")
          .within(0, 10_000, "kg m");
  public static final InputColumn REACH_WORTH =
      row(
              "Reach worth",
              Kind.LENGTH,
              "0.25 mm",
              "How far forward the tackle's centre may lie to save a minute a day of reaching for"
                  + " boxes not at hand; 0 = reach does not count.")
          .within(0, 500, "mm");
  public static final InputColumn IDLE_AFTER =
      row("Idle after (months)", Kind.NUMBER, "12", "Months without a throw to call it idle.")
          .alias("Idle after")
          .within(0.1, 1200, "months");
  public static final InputColumn HALF_LIFE =
      row("Half-life (months)", Kind.NUMBER, "none", "Months after which a trip counts half.")
          .alias("Half-life", "Halflife (months)", "Halflife")
          .within(0.1, 1200, "months");
  public static final InputColumn LABEL_WIDTH =
      row("Label width", Kind.LENGTH, "63 mm", "Width of a label on your sheet of labels.")
          .within(20, 200, "mm");
  public static final InputColumn LABEL_HEIGHT =
      row("Label height", Kind.LENGTH, "34 mm", "Height of a label.").within(15, 250, "mm");
  public static final InputColumn LABELS_ACROSS =
      row("Labels across", Kind.PIECES, "3", "Labels side by side.").within(1, 10, "");
  public static final InputColumn LABELS_DOWN =
      row("Labels down", Kind.PIECES, "8", "Labels one below the other.").within(1, 20, "");

  /** Rows of the sheet Settings. */
  public static final List<InputColumn> SETTINGS =
      List.of(
          UNITS,
          AS_OF,
          CARRY_AT_LEAST,
          STOCK_COUNTED_ON,
          CHANCE_WANTED,
          PLANNING_HOURS,
          PLANNING_DAYS,
          LEAD_TIME,
          BUDGET,
          CURRENCY,
          FILL_FACTOR,
          SIDE_TOLERANCE,
          REACH_WORTH,
          IDLE_AFTER,
          HALF_LIFE,
          LABEL_WIDTH,
          LABEL_HEIGHT,
          LABELS_ACROSS,
          LABELS_DOWN);

  public static final InputColumn PLATE_WEIGHT =
      row("Plate weight", Kind.LOAD_MASS, "not known", "Persons, motor and gear at most.");
  public static final InputColumn PLATE_PERSONS_WEIGHT =
      row("Plate persons weight", Kind.LOAD_MASS, "not known", "Persons at most.");
  public static final InputColumn PLATE_INCLUDES_MOTOR =
      row(
          "Plate includes motor",
          Kind.YES_NO,
          "yes",
          "Yes if the first line counts the motor, as for outboards.");
  public static final InputColumn TRIM_TEST_WEIGHT =
      row("Trim test weight", Kind.LOAD_MASS, "not known", "What you moved aft.");
  public static final InputColumn TRIM_TEST_DISTANCE =
      row("Trim test distance", Kind.LENGTH, "not known", "How far you moved it.");
  public static final InputColumn TRIM_TEST_BOW_CHANGE =
      row("Trim test bow change", Kind.LENGTH, "not known", "How far the bow rose.");
  public static final InputColumn HEEL_TEST_WEIGHT =
      row("Heel test weight", Kind.LOAD_MASS, "not known", "What you moved across.");
  public static final InputColumn HEEL_TEST_DISTANCE =
      row("Heel test distance", Kind.LENGTH, "not known", "How far you moved it.");
  public static final InputColumn HEEL_TEST_ANGLE =
      row("Heel test angle (deg)", Kind.NUMBER, "not known", "Change on a level, in degrees.")
          .alias("Heel test angle", "Heel test angle (degrees)");

  /** Rows of the sheet Boat. */
  public static final List<InputColumn> BOAT =
      List.of(
          PLATE_WEIGHT,
          PLATE_PERSONS_WEIGHT,
          PLATE_INCLUDES_MOTOR,
          TRIM_TEST_WEIGHT,
          TRIM_TEST_DISTANCE,
          TRIM_TEST_BOW_CHANGE,
          HEEL_TEST_WEIGHT,
          HEEL_TEST_DISTANCE,
          HEEL_TEST_ANGLE);

  private InputRows() {}

  /** Returns whether a date lies between 1950 and 2199. */
  public static boolean isPlausible(LocalDate day) {
    return !day.isBefore(EARLIEST_DATE) && !day.isAfter(LATEST_DATE);
  }

  private static InputColumn row(String name, Kind kind, String standard, String meaning) {
    return InputColumn.optional(name, kind, standard, meaning).forgiving();
  }
}
