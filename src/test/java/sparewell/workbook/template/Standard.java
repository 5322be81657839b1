package sparewell.workbook.template;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sparewell.units.UnitSystem;
import sparewell.workbook.InputColumn;
import sparewell.workbook.InputColumn.Kind;

/**
 * The standard value of a setting or boat figure as the template fills it in.
 *
 * @param value a number or a word; an empty text where the standard is none that could be typed
 * @param unit the unit the standard is given in, shown after the name; empty where it has none
 */
record Standard(Object value, String unit) {
  private static final Pattern AMOUNT = Pattern.compile("([0-9.]+)(?: ([a-z]+))?");

  static Standard of(InputColumn line, UnitSystem units) {
    Matcher amount = AMOUNT.matcher(line.standard());
    if (line.choices().contains("metric")) {
      return new Standard(units == UnitSystem.US ? "us" : "metric", "");
    }
    if (amount.matches()) {
      return new Standard(
          new BigDecimal(amount.group(1)), amount.group(2) == null ? "" : amount.group(2));
    }
    boolean word = line.kind() == Kind.YES_NO || line.name().equals("Currency");
    return new Standard(word ? line.standard() : "", "");
  }
}
