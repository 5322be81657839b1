package sparewell.check;

import java.util.Optional;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.FixedLoad;
import sparewell.season.Season;
import sparewell.units.Mass;
import sparewell.units.MassUnit;
import sparewell.units.Spoken;

/** Weights that look like a mix-up of units. The bounds are common practice, no source. */
final class WeightsPlausible implements Rule {
  private static final Mass HEAVIEST_PIECE = Mass.of(3, MassUnit.KILOGRAM);
  private static final Mass HEAVIEST_BOX = Mass.of(25, MassUnit.KILOGRAM);
  private static final Mass LIGHTEST_PERSON = Mass.of(15, MassUnit.KILOGRAM);
  private static final Mass HEAVIEST_PERSON = Mass.of(250, MassUnit.KILOGRAM);

  @Override
  public void check(Season season, Findings findings) {
    season.styles().stream()
        .filter(style -> exceeds(style.weightEach(), HEAVIEST_PIECE))
        .forEach(s -> pieceDoubtful(season, findings, s.origin(), s.name(), s.weightEach()));
    season.stock().stream()
        .filter(row -> exceeds(row.weightEach(), HEAVIEST_PIECE))
        .forEach(
            r -> pieceDoubtful(season, findings, r.origin(), r.item().spoken(), r.weightEach()));
    season.boxes().stream()
        .filter(box -> exceeds(box.emptyWeight(), HEAVIEST_BOX))
        .forEach(
            box ->
                findings.add(
                    Code.BOX_WEIGHT_DOUBTFUL,
                    box.origin().under("Empty weight"),
                    box.name(),
                    shown(season, box.emptyWeight().orElseThrow())));
    season.loads().stream()
        .filter(load -> load.kind() == FixedLoad.Kind.PERSON)
        .filter(
            load ->
                load.weight().compareTo(LIGHTEST_PERSON) < 0
                    || load.weight().compareTo(HEAVIEST_PERSON) > 0)
        .forEach(
            load ->
                findings.add(
                    Code.PERSON_WEIGHT_DOUBTFUL,
                    load.origin().under("Weight"),
                    load.name(),
                    shown(season, load.weight())));
  }

  private static boolean exceeds(Optional<Mass> weight, Mass most) {
    return weight.filter(w -> w.compareTo(most) > 0).isPresent();
  }

  private static void pieceDoubtful(
      Season season, Findings findings, Cell row, String name, Optional<Mass> weight) {
    findings.add(
        Code.ITEM_WEIGHT_DOUBTFUL,
        row.under("Weight each"),
        name,
        shown(season, weight.orElseThrow()));
  }

  private static String shown(Season season, Mass weight) {
    return Spoken.mass(weight, season.settings().units());
  }
}
