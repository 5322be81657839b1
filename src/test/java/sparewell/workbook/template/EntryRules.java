package sparewell.workbook.template;

import java.util.List;
import org.apache.poi.ss.usermodel.DataValidation;
import org.apache.poi.ss.usermodel.DataValidationConstraint;
import org.apache.poi.ss.usermodel.DataValidationConstraint.OperatorType;
import org.apache.poi.ss.usermodel.DataValidationConstraint.ValidationType;
import org.apache.poi.ss.usermodel.DataValidationHelper;
import org.apache.poi.ss.util.CellRangeAddressList;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFDataValidationConstraint;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import sparewell.workbook.InputColumn.Kind;

/** Dropdowns, input messages and warnings on cells. They warn and never stop. */
final class EntryRules {
  /** Last row that the rules reach, counted from 1. */
  static final int LAST_ROW = 2000;

  private static final int LONGEST_TITLE = 32;
  private static final int LONGEST_TEXT = 255;

  private final XSSFSheet sheet;
  private final DataValidationHelper rules;

  EntryRules(XSSFSheet sheet) {
    this.sheet = sheet;
    this.rules = sheet.getDataValidationHelper();
  }

  /**
   * Puts a rule on some cells of a column.
   *
   * @param list name of the list to choose from; empty where there is none
   */
  void add(
      int firstRow,
      int lastRow,
      int column,
      Kind kind,
      List<String> choices,
      String list,
      String title,
      String message) {
    DataValidationConstraint constraint =
        list.isEmpty()
            ? constraint(kind, choices, new CellReference(firstRow, column).formatAsString())
            : rules.createFormulaListConstraint(list);
    DataValidation rule =
        rules.createValidation(
            constraint, new CellRangeAddressList(firstRow, lastRow, column, column));
    rule.setEmptyCellAllowed(true);
    // With POI's xlsx rules, true is what shows the arrow.
    rule.setSuppressDropDownArrow(true);
    rule.setShowPromptBox(true);
    rule.createPromptBox(cut(title, LONGEST_TITLE), cut(message, LONGEST_TEXT));
    if (constraint.getValidationType() != ValidationType.ANY) {
      rule.setErrorStyle(DataValidation.ErrorStyle.WARNING);
      rule.setShowErrorBox(true);
      rule.createErrorBox(cut(title, LONGEST_TITLE), warning(kind, list));
    }
    sheet.addValidationData(rule);
  }

  private DataValidationConstraint constraint(Kind kind, List<String> choices, String cell) {
    return switch (kind) {
      case CHOICE -> rules.createExplicitListConstraint(choices.toArray(new String[0]));
      case YES_NO -> rules.createExplicitListConstraint(new String[] {"yes", "no"});
      // A weight may also be typed as text, such as 3/8 oz; a whole date number is far above these.
      case ITEM_MASS -> rules.createCustomConstraint(textOrBelow(cell, 2_000));
      case LOAD_MASS -> rules.createCustomConstraint(textOrBelow(cell, 20_000));
      case LENGTH, POSITION ->
          rules.createCustomConstraint(
              "OR(ISTEXT(" + cell + "),AND(ISNUMBER(" + cell + "),ABS(" + cell + ")<5000))");
      case PIECES -> rules.createIntegerConstraint(OperatorType.GREATER_OR_EQUAL, "0", null);
      case COUNT, NUMBER, MONEY ->
          rules.createDecimalConstraint(OperatorType.GREATER_OR_EQUAL, "0", null);
      case HOURS -> rules.createDecimalConstraint(OperatorType.BETWEEN, "0", "500");
      case DAYS -> rules.createDecimalConstraint(OperatorType.BETWEEN, "0.1", "60");
      case CHANCE -> rules.createDecimalConstraint(OperatorType.BETWEEN, "0.001", "0.9999");
      // 36526 is 2000-01-01, 73050 is 2099-12-31.
      case DATE -> rules.createDateConstraint(OperatorType.BETWEEN, "36526", "73050", null);
      case TEXT, SIZE, BY_ROW -> new XSSFDataValidationConstraint(ValidationType.ANY, "");
    };
  }

  private static String textOrBelow(String cell, int limit) {
    return "OR(ISTEXT("
        + cell
        + "),AND(ISNUMBER("
        + cell
        + "),"
        + cell
        + ">=0,"
        + cell
        + "<"
        + limit
        + "))";
  }

  private static String warning(Kind kind, String list) {
    if (!list.isEmpty()) {
      return "This is not in your list yet. Keep it if you mean to add it there.";
    }
    return switch (kind) {
      case CHOICE, YES_NO -> "The analyser knows the words in the list only.";
      case ITEM_MASS, LOAD_MASS -> "A weight is expected, such as 0.5, 3/8 or 3/8 oz.";
      case LENGTH, POSITION -> "A length is expected, such as 12.5 or 12 1/2.";
      case PIECES -> "A whole number of pieces is expected.";
      case COUNT -> "A count is expected: whole pieces, or packs such as 2.5.";
      case HOURS -> "Hours are expected, such as 7.5.";
      case DAYS -> "A number of days is expected.";
      case CHANCE -> "A chance between 0 and 1 is expected, such as 0.95.";
      case DATE -> "A date is expected, such as 2026-05-09.";
      case NUMBER, MONEY -> "A number of at least 0 is expected.";
      case TEXT, SIZE, BY_ROW -> "";
    };
  }

  private static String cut(String text, int longest) {
    return text.length() <= longest ? text : text.substring(0, longest - 1) + "…";
  }
}
