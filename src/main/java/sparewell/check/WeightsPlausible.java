package sparewell.check;

import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Box;
import sparewell.season.FixedLoad;
import sparewell.season.Season;
import sparewell.season.StockRow;
import sparewell.season.Style;
import sparewell.units.Mass;
import sparewell.units.MassUnit;
import sparewell.units.Spoken;
import sparewell.units.UnitSystem;

/** Weights that look like a mix-up of units. The bounds are common practice, no source. */
final class WeightsPlausible implements Rule {

  private static final double HEAVIEST_PIECE_KG = 3;
  private static final double HEAVIEST_BOX_KG = 25;
  private static final double LIGHTEST_PERSON_KG = 15;
  private static final double HEAVIEST_PERSON_KG = 250;

  @Override
  public void check(Season season, Findings findings) {
    UnitSystem units = season.settings().units();
    for (Style style : season.styles()) {
      style
          .weightEach()
          .filter(weight -> weight.in(MassUnit.KILOGRAM) > HEAVIEST_PIECE_KG)
          .ifPresent(
              w ->
                  say(
                      findings,
                      units,
                      Code.ITEM_WEIGHT_DOUBTFUL,
                      style.origin().under("Weight each"),
                      style.name(),
                      w));
    }
    for (StockRow row : season.stock()) {
      row.weightEach()
          .filter(weight -> weight.in(MassUnit.KILOGRAM) > HEAVIEST_PIECE_KG)
          .ifPresent(
              w ->
                  say(
                      findings,
                      units,
                      Code.ITEM_WEIGHT_DOUBTFUL,
                      row.origin().under("Weight each"),
                      row.item().spoken(),
                      w));
    }
    for (Box box : season.boxes()) {
      box.emptyWeight()
          .filter(weight -> weight.in(MassUnit.KILOGRAM) > HEAVIEST_BOX_KG)
          .ifPresent(
              w ->
                  say(
                      findings,
                      units,
                      Code.BOX_WEIGHT_DOUBTFUL,
                      box.origin().under("Empty weight"),
                      box.name(),
                      w));
    }
    for (FixedLoad load : season.loads()) {
      double kg = load.weight().in(MassUnit.KILOGRAM);
      if (load.kind() == FixedLoad.Kind.PERSON
          && (kg < LIGHTEST_PERSON_KG || kg > HEAVIEST_PERSON_KG)) {
        say(
            findings,
            units,
            Code.PERSON_WEIGHT_DOUBTFUL,
            load.origin().under("Weight"),
            load.name(),
            load.weight());
      }
    }
  }

  private static void say(
      Findings findings, UnitSystem units, Code code, Cell at, String name, Mass weight) {
    findings.add(code, at, name, Spoken.mass(weight, units));
  }
}
