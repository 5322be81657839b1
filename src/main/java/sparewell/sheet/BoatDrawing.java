package sparewell.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sparewell.load.BoatPlan;
import sparewell.load.CompartmentLoad;
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
  private static final double BOTTOM = 0.80;
  private static final double LINE = 0.05;

  /** Smaller letters in a compartment are put beside it instead. */
  private static final double READABLE = 0.04;

  private static final double TAG = 0.038;
  private static final double MARK = 0.06;
  private static final double LABEL = 0.055;

  /** Width of a letter by its line's height; wide fonts are allowed for. */
  private static final double LETTER = 0.55;

  private static final double UNKNOWN_METRES = 0.25;

  private final List<CompartmentLoad> compartments;
  private final BoatPlan plan;
  private final UnitSystem units;
  private final List<Drawing.Shape> shapes = new ArrayList<>();
  private double hindmost;
  private double bow;
  private double beam;

  /** Bluntness of the bow: just enough that every compartment lies within the outline. */
  private int bluntness = 2;

  private final List<Drawing.Point> labels = new ArrayList<>();
  private double ratio;
  private double scaleAcross;
  private double scaleDown;

  private BoatDrawing(List<CompartmentLoad> compartments, BoatPlan plan, UnitSystem units) {
    this.compartments = compartments;
    this.plan = plan;
    this.units = units;
  }

  static Drawing of(List<CompartmentLoad> compartments, BoatPlan plan, UnitSystem units) {
    return new BoatDrawing(compartments, plan, units).draw();
  }

  private Drawing draw() {
    measure();
    double middle = down(0);
    hull();
    Drawing.Point aft = new Drawing.Point(LEFT, middle);
    shapes.add(new Drawing.Stroke(aft, new Drawing.Point(RIGHT, middle), true, false));
    double most = compartments.stream().mapToDouble(BoatDrawing::share).max().orElse(0);
    compartments.stream()
        .sorted(Comparator.comparingDouble(outline -> -along(outline) * wide(outline)))
        .forEach(outline -> compartment(outline, most));
    plan.ways().forEach(way -> arrow(way, at(way.from()), at(way.to())));
    caption(LEFT, 0.81, 0.3, "transom", Drawing.Align.LEFT);
    caption(0.67, 0.81, 0.3, "bow", Drawing.Align.RIGHT);
    caption(0.35, 0.81, 0.3, "starboard side below, port above", Drawing.Align.CENTRE);
    names();
    legend();
    return new Drawing("The boat from above", description(), ratio, shapes);
  }

  private void measure() {
    double foremost = 0.5;
    double widest = 0.3;
    hindmost = 0;
    for (CompartmentLoad outline : compartments) {
      double station = metres(outline.centre().fromTransom());
      double offset = Math.abs(metres(outline.centre().fromCentreline()));
      hindmost = Math.min(hindmost, station - along(outline) / 2);
      foremost = Math.max(foremost, station + along(outline) / 2);
      widest = Math.max(widest, offset + wide(outline) / 2);
    }
    beam = 1.08 * widest;
    bow = foremost + 0.06 * (foremost - hindmost);
    while (bluntness < 12 && compartments.stream().anyMatch(this::proud)) {
      bluntness++;
    }
    double length = bow - hindmost;
    double width = 2 * beam;
    double natural = length / width * (BOTTOM - TOP) / (RIGHT - LEFT);
    ratio = Math.min(3.2, Math.max(1.4, natural));
    double metre = Math.min((RIGHT - LEFT) * ratio / length, (BOTTOM - TOP) / width);
    scaleAcross = metre / ratio;
    scaleDown = metre;
  }

  /** True for a compartment whose forward corner lies outside the outline. */
  private boolean proud(CompartmentLoad outline) {
    double corner = metres(outline.centre().fromTransom()) + along(outline) / 2;
    double aside = Math.abs(metres(outline.centre().fromCentreline())) + wide(outline) / 2;
    return aside > halfBeam(corner);
  }

  /** Half the outline's width at a station: straight sides, then rounded to the bow. */
  private double halfBeam(double station) {
    double straight = hindmost + 0.5 * (bow - hindmost);
    double share = Math.max(0, (station - straight) / (bow - straight));
    return beam * Math.sqrt(Math.max(0, 1 - Math.pow(share, bluntness)));
  }

  /** The hull's outline: no drawing of the boat at hand, only where its ends and sides are. */
  private void hull() {
    int parts = 28;
    List<Drawing.Point> port = new ArrayList<>();
    List<Drawing.Point> starboard = new ArrayList<>();
    for (int part = 0; part <= parts; part++) {
      double station = hindmost + (bow - hindmost) * Math.sqrt(part / (double) parts);
      port.add(new Drawing.Point(across(station), down(-halfBeam(station))));
      starboard.add(0, new Drawing.Point(across(station), down(halfBeam(station))));
    }
    port.addAll(starboard);
    shapes.add(new Drawing.Outline(port));
  }

  private void arrow(BoatPlan.Way way, Drawing.Point from, Drawing.Point to) {
    double wide = to.acrossShare() - from.acrossShare();
    double high = to.downShare() - from.downShare();
    // beside the centres, so that names stay free and there and back do not cover each other
    double aside = (wide > 0 ? 1 : -1) * 0.05;
    Drawing.Point begin = along(from, wide, high, aside, 0.08);
    Drawing.Point end = along(from, wide, high, aside, 0.92);
    shapes.add(new Drawing.Stroke(begin, end, false, true));
    String numbers =
        way.boxes().stream()
            .map(box -> String.valueOf(box.step()))
            .collect(Collectors.joining(", "));
    Drawing.Point label =
        clearest(
            Stream.of(0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8)
                .map(share -> along(from, wide, high, aside, share))
                .toList());
    labels.add(label);
    double width = (numbers.length() + 1.5) * LABEL * LETTER / ratio;
    Drawing.Frame frame =
        new Drawing.Frame(
            label.acrossShare() - width / 2, label.downShare() - LABEL / 2, width, LABEL);
    shapes.add(new Drawing.Area(frame, 0, false));
    shapes.add(new Drawing.Caption(frame, numbers, 0.8 * LABEL, Drawing.Align.CENTRE, true, false));
  }

  private static Drawing.Point along(
      Drawing.Point from, double wide, double high, double aside, double share) {
    return new Drawing.Point(
        from.acrossShare() + share * wide, from.downShare() + aside + share * high);
  }

  /** The place that lies furthest from names, marks and the labels set so far. */
  private Drawing.Point clearest(List<Drawing.Point> places) {
    List<Drawing.Point> taken = new ArrayList<>(labels);
    compartments.forEach(outline -> taken.add(at(outline.centre())));
    marks().forEach(mark -> taken.add(at(mark)));
    Drawing.Point best = places.get(0);
    double clearest = -1;
    for (Drawing.Point place : places) {
      double nearest = 1;
      for (Drawing.Point other : taken) {
        double across = (place.acrossShare() - other.acrossShare()) * ratio;
        nearest = Math.min(nearest, Math.hypot(across, place.downShare() - other.downShare()));
      }
      if (nearest > clearest + 0.02) {
        clearest = nearest;
        best = place;
      }
    }
    return best;
  }

  private List<BoatPlan.Point> marks() {
    return Stream.of(plan.centreNow(), plan.centrePlanned()).flatMap(Optional::stream).toList();
  }

  private void names() {
    String words =
        plan.ways().stream()
            .flatMap(way -> way.boxes().stream())
            .sorted(Comparator.comparingInt(BoatPlan.Moved::step))
            .map(box -> box.step() + " " + box.box())
            .collect(Collectors.joining(" · "));
    if (!words.isEmpty()) {
      double line = Math.min(0.042, 0.94 * ratio * 3 / (Math.max(1, words.length()) * LETTER));
      String text = "Moves: " + words;
      Drawing.Frame frame = new Drawing.Frame(LEFT, 0.87, 0.94, 0.12);
      shapes.add(new Drawing.Caption(frame, text, line, Drawing.Align.LEFT, false, false));
    }
  }

  private Drawing.Point at(BoatPlan.Point point) {
    return new Drawing.Point(
        across(metres(point.fromTransom())), down(metres(point.fromCentreline())));
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

  private static double along(CompartmentLoad outline) {
    return outline.size().map(size -> metres(size.length())).orElse(UNKNOWN_METRES);
  }

  private static double wide(CompartmentLoad outline) {
    return outline.size().map(size -> metres(size.width())).orElse(UNKNOWN_METRES);
  }

  private static double share(CompartmentLoad outline) {
    return outline.sharePercent().orElse(0);
  }

  private void compartment(CompartmentLoad outline, double most) {
    double width = along(outline) * scaleAcross;
    double height = wide(outline) * scaleDown;
    Drawing.Point centre = at(outline.centre());
    double left = centre.acrossShare() - width / 2;
    double top = centre.downShare() - height / 2;
    double grey = most > 0 ? 0.65 * share(outline) / most : 0;
    boolean unknown = outline.size().isEmpty();
    Drawing.Frame frame = new Drawing.Frame(left, top, width, height);
    shapes.add(new Drawing.Area(frame, grey, unknown));
    String weight =
        (outline.weightKnown() ? "" : "at least ") + Spoken.mass(outline.weight(), units);
    List<String> lines = new ArrayList<>(wrapped(outline.compartment(), width * ratio, height));
    lines.add(weight);
    Drawing.Frame room = clearOfMarks(frame);
    double line = Math.min(LINE, width * ratio / (longest(lines) * LETTER));
    line = Math.min(line, room.heightShare() / (lines.size() + 0.3));
    if (line < READABLE) {
      double clear = Math.max(width * ratio, height) / 2 + 0.005;
      shapes.add(new Drawing.Tag(centre, clear, outline.compartment() + "\n" + weight, TAG));
      return;
    }
    String words = String.join("\n", lines);
    boolean light = grey > 0.45;
    shapes.add(new Drawing.Caption(room, words, line, Drawing.Align.CENTRE, true, light));
  }

  private static int longest(List<String> lines) {
    return lines.stream().mapToInt(String::length).max().orElse(1);
  }

  /** The part of a rectangle, of its full width, that no mark of the tackle's centre covers. */
  private Drawing.Frame clearOfMarks(Drawing.Frame all) {
    double left = all.leftShare();
    double width = all.widthShare();
    double from = all.topShare();
    double to = from + all.heightShare();
    for (BoatPlan.Point mark : marks()) {
      double across = at(mark).acrossShare();
      double down = at(mark).downShare();
      boolean inside = across > left && across < left + width && down > from && down < to;
      if (inside && down - from > to - down) {
        to = down - MARK / 2;
      } else if (inside) {
        from = down + MARK / 2;
      }
    }
    return new Drawing.Frame(left, from, width, Math.max(0, to - from));
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
      double size = Math.min(width / (longest(lines) * LETTER), height / (lines.size() + 1.3));
      size = Math.min(size, LINE);
      if (size > largest + 1e-9) {
        largest = size;
        best = lines;
      }
    }
    return best;
  }

  private void legend() {
    plan.centreNow()
        .ifPresent(now -> mark(LEFT, "tackle's centre now", now, Drawing.Mark.OPEN_CIRCLE));
    plan.centrePlanned()
        .filter(planned -> !plan.centreNow().equals(plan.centrePlanned()))
        .ifPresent(
            planned -> mark(0.5, "with the recommended moves", planned, Drawing.Mark.DIAMOND));
    caption(LEFT, 0.09, 0.94, "the darker a compartment, the more it holds", Drawing.Align.LEFT);
  }

  /** A mark in the boat, and the same with its words above. */
  private void mark(double left, String words, BoatPlan.Point point, Drawing.Mark mark) {
    String text = words + " (" + Spoken.length(point.fromTransom(), units) + ")";
    shapes.add(new Drawing.Marker(new Drawing.Point(left + 0.01, 0.05), 0.05, mark));
    caption(left + 0.03, 0.02, 0.44, text, Drawing.Align.LEFT);
    shapes.add(new Drawing.Marker(at(point), MARK, mark));
  }

  private void caption(double left, double top, double width, String text, Drawing.Align align) {
    Drawing.Frame frame = new Drawing.Frame(left, top, width, 0.06);
    shapes.add(new Drawing.Caption(frame, text, 0.042, align, false, false));
  }

  private String description() {
    return compartments.stream()
        .sorted(Comparator.comparing(outline -> outline.centre().fromTransom()))
        .map(outline -> outline.compartment() + " " + Spoken.mass(outline.weight(), units))
        .collect(Collectors.joining(", ", "Compartments from the transom forward: ", "."));
  }
}
