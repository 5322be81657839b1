package sparewell.sheet;

import java.util.List;
import sparewell.load.LoadReport;
import sparewell.load.LoadReport.Choice;
import sparewell.spares.IdleStyle;
import sparewell.stow.Moment;
import sparewell.table.Block;
import sparewell.units.Length;
import sparewell.units.Spoken;
import sparewell.units.UnitSystem;

/** Effect of the tackle on the whole boat, and that of moving it or leaving it ashore. */
final class LoadComparison {
  private LoadComparison() {}

  static Block of(LoadReport report, List<IdleStyle> idle, UnitSystem units) {
    Lines lines = new Lines();
    lines.heading("Effect of the tackle on the whole boat");
    if (report.allUp().weightKg() > 0) {
      lines.plain(
          "The tackle is %.1f %% of all weight listed (%s).",
          100 * report.tackle().weightKg() / report.allUp().weightKg(),
          Spoken.mass(report.allUp().weightKg(), units));
    }
    if (report.placed()) {
      lines.plain("All-up centre now: " + centre(report.now(), units));
      report.ashore().ifPresent(ashore -> moved(report, ashore, units, lines));
      if (!idle.isEmpty()) {
        Moment rest = report.tackleWithout(idle);
        lines.plain(
            "With the idle styles (listed on Spares) left ashore: %s less tackle%s.",
            Spoken.mass(report.tackle().weightKg() - rest.weightKg(), units),
            rest.centre().map(at -> ", its centre at " + Spoken.length(at, units)).orElse(""));
      }
      lines.plain(
          "Layout changes the centre, the trim at rest, the list and the margin. No gain in speed"
              + " is promised.");
    }
    return lines.block();
  }

  private static void moved(LoadReport report, Choice ashore, UnitSystem units, Lines lines) {
    lines.plain(
        "With the stow plan: %s%s; the weight aboard stays the same.",
        centre(report.planned(), units),
        report
            .planned()
            .bowRise()
            .map(rise -> ", bow " + upOrDown(rise, units) + " at rest")
            .orElse(""));
    String less = Spoken.mass(report.movedKg(), units);
    lines.plain(
        "With the boxes that would move (%s) left ashore instead: %s; %s less aboard%s.",
        less,
        centre(ashore, units),
        less,
        ashore.plateMarginKg().map(margin -> margin(margin, units)).orElse(""));
  }

  private static String margin(double kg, UnitSystem units) {
    return (kg >= 0 ? " and " : " and still ")
        + Spoken.mass(kg, units)
        + (kg >= 0 ? " left to the plate" : " over the plate");
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
