package sparewell.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sparewell.load.BoatPlan;
import sparewell.table.Drawing;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.Spoken;
import sparewell.units.UnitSystem;

/**
 * Draws the boat from above, to scale, bow to the right: the darker a compartment the more it
 * holds; weights are written in as well, so that nothing hangs on shade alone.
 */
final class BoatDrawing {
  private static final double LEFT = 0.03;
  private static final double RIGHT = 0.97;
  private static final double TOP = 0.16;
  private static final double BOTTOM = 0.90;
  private static final double LINE = 0.05;
  private static final double SMALLEST_LINE = 0.022;
  private static final double MARK = 0.06;

  /** Width of a letter by its line's height; wide fonts are allowed for. */
  private static final double LETTER = 0.55;

  private static final double UNKNOWN_METRES = 0.25;

  private final BoatPlan plan;
  private final UnitSystem units;
  private final List<Drawing.Shape> shapes = new ArrayList<>();
  private double hindmost;
  private double ratio;
  private double scaleAcross;
  private double scaleDown;

  private BoatDrawing(BoatPlan plan, UnitSystem units) {
    this.plan = plan;
    this.units = units;
  }

  static Drawing of(BoatPlan plan, UnitSystem units) {
    return new BoatDrawing(plan, units).draw();
  }

  private Drawing draw() {
    measure();
    double middle = down(0);
    shapes.add(new Drawing.Stroke(LEFT, middle, RIGHT, middle, true, false));
    double transom = across(0);
    shapes.add(new Drawing.Stroke(transom, TOP, transom, BOTTOM, false, false));
    double most = plan.compartments().stream().mapToDouble(BoatPlan.Outline::share).max().orElse(0);
    plan.compartments().stream()
        .sorted(Comparator.comparingDouble(outline -> -along(outline) * wide(outline)))
        .forEach(outline -> compartment(outline, most));
    caption(LEFT, 0.91, 0.3, "transom", Drawing.Align.LEFT);
    caption(0.67, 0.91, 0.3, "bow", Drawing.Align.RIGHT);
    caption(0.35, 0.91, 0.3, "starboard side below, port above", Drawing.Align.CENTRE);
    legend();
    return new Drawing("The boat from above", description(), ratio, shapes);
  }

  private void measure() {
    double foremost = 0.5;
    double widest = 0.3;
    hindmost = 0;
    for (BoatPlan.Outline outline : plan.compartments()) {
      double station = metres(outline.centre().fromTransom());
      double offset = Math.abs(metres(outline.centre().fromCentreline()));
      hindmost = Math.min(hindmost, station - along(outline) / 2);
      foremost = Math.max(foremost, station + along(outline) / 2);
      widest = Math.max(widest, offset + wide(outline) / 2);
    }
    double length = foremost - hindmost;
    double width = 2 * widest;
    double natural = length / width * (BOTTOM - TOP) / (RIGHT - LEFT);
    ratio = Math.min(3.2, Math.max(1.4, natural));
    double metre = Math.min((RIGHT - LEFT) * ratio / length, (BOTTOM - TOP) / width);
    scaleAcross = metre / ratio;
    scaleDown = metre;
  }

  private double across(double station) {
    return LEFT + (station - hindmost) * scaleAcross;
  }

  private double down(double offset) {
    return (TOP + BOTTOM) / 2 + offset * scaleDown;
  }

  private static double metres(Length length) {
    return length.in(LengthUnit.METRE);
  }

  private static double along(BoatPlan.Outline outline) {
    return outline.along().map(BoatDrawing::metres).orElse(UNKNOWN_METRES);
  }

  private static double wide(BoatPlan.Outline outline) {
    return outline.across().map(BoatDrawing::metres).orElse(UNKNOWN_METRES);
  }

  private void compartment(BoatPlan.Outline outline, double most) {
    double width = along(outline) * scaleAcross;
    double height = wide(outline) * scaleDown;
    double left = across(metres(outline.centre().fromTransom())) - width / 2;
    double top = down(metres(outline.centre().fromCentreline())) - height / 2;
    double grey = most > 0 ? 0.65 * outline.share() / most : 0;
    boolean unknown = outline.along().isEmpty() || outline.across().isEmpty();
    shapes.add(new Drawing.Area(left, top, width, height, grey, unknown));
    String weight =
        (outline.weightKnown() ? "" : "at least ") + Spoken.mass(outline.weight(), units);
    List<String> lines = new ArrayList<>(wrapped(outline.name(), width * ratio, height));
    lines.add(weight);
    double[] room = clearOfMarks(left, top, width, height);
    int longest = lines.stream().mapToInt(String::length).max().orElse(1);
    double line = Math.min(LINE, width * ratio / (longest * LETTER));
    line = Math.max(SMALLEST_LINE, Math.min(line, room[1] / (lines.size() + 0.3)));
    shapes.add(
        new Drawing.Caption(
            left,
            room[0],
            width,
            room[1],
            String.join("\n", lines),
            line,
            Drawing.Align.CENTRE,
            true,
            grey > 0.45));
  }

  /** Top and height of the part of a rectangle that no mark of the tackle's centre covers. */
  private double[] clearOfMarks(double left, double top, double width, double height) {
    double from = top;
    double to = top + height;
    List<BoatPlan.Point> marks = new ArrayList<>();
    plan.centreNow().ifPresent(marks::add);
    plan.centrePlanned().ifPresent(marks::add);
    for (BoatPlan.Point point : marks) {
      double across = across(metres(point.fromTransom()));
      double down = down(metres(point.fromCentreline()));
      boolean inside = across > left && across < left + width && down > from && down < to;
      if (inside && down - from > to - down) {
        to = down - MARK / 2;
      } else if (inside) {
        from = down + MARK / 2;
      }
    }
    return to - from > SMALLEST_LINE ? new double[] {from, to - from} : new double[] {top, height};
  }

  /** The name in as many lines as let it be written largest. */
  private static List<String> wrapped(String name, double width, double height) {
    List<String> best = List.of(name);
    double largest = 0;
    String[] words = name.split(" ");
    for (int perLine = words.length; perLine >= 1; perLine--) {
      List<String> lines = new ArrayList<>();
      for (int from = 0; from < words.length; from += perLine) {
        int to = Math.min(words.length, from + perLine);
        lines.add(String.join(" ", List.of(words).subList(from, to)));
      }
      int longest = lines.stream().mapToInt(String::length).max().orElse(1);
      double size = Math.min(width / (longest * LETTER), height / (lines.size() + 1.3));
      size = Math.min(size, LINE);
      if (size > largest + 1e-9) {
        largest = size;
        best = lines;
      }
    }
    return best;
  }

  private void legend() {
    double size = 0.05;
    double left = LEFT;
    String now = "tackle's centre now" + station(plan.centreNow());
    String planned = "with the recommended moves" + station(plan.centrePlanned());
    boolean same = plan.centreNow().equals(plan.centrePlanned());
    if (plan.centreNow().isPresent()) {
      shapes.add(new Drawing.Marker(left + 0.01, 0.05, size, Drawing.Mark.OPEN_CIRCLE));
      caption(left + 0.03, 0.02, 0.44, now, Drawing.Align.LEFT);
      mark(plan.centreNow().get(), Drawing.Mark.OPEN_CIRCLE);
    }
    if (plan.centrePlanned().isPresent() && !same) {
      shapes.add(new Drawing.Marker(0.51, 0.05, size, Drawing.Mark.DIAMOND));
      caption(0.53, 0.02, 0.44, planned, Drawing.Align.LEFT);
      mark(plan.centrePlanned().get(), Drawing.Mark.DIAMOND);
    }
    caption(LEFT, 0.09, 0.94, "the darker a compartment, the more it holds", Drawing.Align.LEFT);
  }

  private String station(Optional<BoatPlan.Point> point) {
    return point.map(at -> " (" + Spoken.length(at.fromTransom(), units) + ")").orElse("");
  }

  private void mark(BoatPlan.Point point, Drawing.Mark mark) {
    double across = across(metres(point.fromTransom()));
    double down = down(metres(point.fromCentreline()));
    shapes.add(new Drawing.Marker(across, down, MARK, mark));
  }

  private void caption(double left, double top, double width, String text, Drawing.Align align) {
    shapes.add(new Drawing.Caption(left, top, width, 0.06, text, 0.042, align, false, false));
  }

  private String description() {
    StringBuilder text = new StringBuilder("Compartments from the transom forward: ");
    List<String> parts = new ArrayList<>();
    plan.compartments().stream()
        .sorted(Comparator.comparing(outline -> outline.centre().fromTransom()))
        .forEach(outline -> parts.add(outline.name() + " " + Spoken.mass(outline.weight(), units)));
    return text.append(String.join(", ", parts)).append('.').toString();
  }
}
