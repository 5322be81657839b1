package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import sparewell.load.Choice;
import sparewell.load.LoadReport;
import sparewell.spares.IdleStyle;
import sparewell.stow.Moment;
import sparewell.table.Block;
import sparewell.units.Length;
import sparewell.units.Spoken;
import sparewell.units.UnitSystem;

/** Effect of the tackle on the whole boat, and that of moving it or leaving it ashore. */
final class LoadComparison {
  private LoadComparison() {}

  /** The lines, under a heading of their own. */
  static List<Block.Line> lines(LoadReport report, List<IdleStyle> idle, UnitSystem units) {
    List<Block.Line> lines = new ArrayList<>();
    lines.add(Block.Line.heading("Effect of the tackle on the whole boat"));
    if (report.allUp().weightKg() > 0) {
      double share = 100 * report.tackle().weightKg() / report.allUp().weightKg();
      lines.add(
          Block.Line.of(
              String.format(
                  Locale.ROOT,
                  "The tackle is %.1f %% of all weight listed (%s).",
                  share,
                  Spoken.mass(report.allUp().weightKg(), units))));
    }
    if (!report.placed()) {
      return lines;
    }
    lines.add(Block.Line.of("All-up centre now: " + centre(report.now(), units)));
    if (report.ashore().isPresent()) {
      lines.add(
          Block.Line.of(
              "With the stow plan: "
                  + centre(report.planned(), units)
                  + report
                      .planned()
                      .bowRise()
                      .map(rise -> ", bow " + upOrDown(rise, units) + " at rest")
                      .orElse("")
                  + "; the weight aboard stays the same."));
      lines.add(
          Block.Line.of(
              "With the boxes that would move ("
                  + Spoken.mass(report.movedKg(), units)
                  + ") left ashore instead: "
                  + centre(report.ashore().get(), units)
                  + "; "
                  + Spoken.mass(report.movedKg(), units)
                  + " less aboard"
                  + report
                      .ashore()
                      .get()
                      .plateMarginKg()
                      .map(
                          margin ->
                              margin >= 0
                                  ? " and " + Spoken.mass(margin, units) + " left to the plate."
                                  : " and still " + Spoken.mass(margin, units) + " over the plate.")
                      .orElse(".")));
    }
    if (!idle.isEmpty()) {
      Moment rest = report.tackleWithout(idle);
      lines.add(
          Block.Line.of(
              "With the idle styles (listed on Spares) left ashore: "
                  + Spoken.mass(report.tackle().weightKg() - rest.weightKg(), units)
                  + " less tackle"
                  + rest.centre()
                      .map(centre -> ", its centre at " + Spoken.length(centre, units))
                      .orElse("")
                  + "."));
    }
    lines.add(
        Block.Line.of(
            "Layout changes the centre, the trim at rest, the list and the margin. No gain in speed"
                + " is promised."));
    return lines;
  }

  private static String centre(Choice choice, UnitSystem units) {
    return choice
        .allUp()
        .centre()
        .map(centre -> Spoken.length(centre, units) + " ahead of the transom")
        .orElse("not known");
  }

  private static String upOrDown(Length rise, UnitSystem units) {
    String size = Spoken.length(new Length(Math.abs(rise.micrometres())), units);
    return rise.micrometres() >= 0 ? "up " + size : "down " + size;
  }
}
