package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import sparewell.load.LoadReport;
import sparewell.stow.MoveStep;
import sparewell.stow.Refusal;
import sparewell.stow.StowPlan;
import sparewell.units.Length;
import sparewell.units.Spoken;
import sparewell.units.UnitSystem;

/** Words of a stow plan: its headline, its steps, and how far it is proven. */
final class StowWords {
  private StowWords() {}

  /** The headline: what to move, what that changes, and what gets worse. */
  static String answer(StowPlan plan, LoadReport report, UnitSystem units) {
    return switch (plan.outcome()) {
      case NOTHING_TO_MOVE -> "Nothing to move: no box aboard may be moved.";
      case STAYS -> "Leave every box where it is: " + proof(plan);
      case REFUSED -> "Nothing is planned: " + refusal(plan.refusal().orElseThrow()) + ".";
      case MOVE -> moving(plan, report, units);
    };
  }

  /** Why nothing is planned, and what to mend. */
  static String refusal(Refusal refusal) {
    if (refusal instanceof Refusal.Outside outside) {
      return outside.places().stream()
          .map(
              place ->
                  place.name()
                      + " is said to stand outside any boat: mend "
                      + Phrase.place(place.positionAt()))
          .collect(Collectors.joining("; "));
    }
    return ((Refusal.Conflict) refusal).finding().message();
  }

  private static String moving(StowPlan plan, LoadReport report, UnitSystem units) {
    StringBuilder text =
        new StringBuilder("Move " + Phrase.count(plan.recommendedMoves(), "box", "boxes") + ": ");
    List<String> gains = new ArrayList<>();
    List<String> worse = new ArrayList<>();
    for (Effect effect : effects(plan, report, units)) {
      (effect.worse() ? worse : gains).add(effect.words());
    }
    if (broken(plan)) {
      gains.add("every limit is kept again");
    }
    text.append(String.join("; ", gains));
    if (!worse.isEmpty()) {
      text.append(gains.isEmpty() ? "" : ". ").append("Worse: ").append(String.join("; ", worse));
    }
    return text.append(".").toString();
  }

  /** A change that a plan makes, in words, and whether for the worse. */
  private record Effect(String words, boolean worse) {}

  /** Centre, bow, heel and reach; what is not known or does not change is left out. */
  private static List<Effect> effects(StowPlan plan, LoadReport report, UnitSystem units) {
    List<Effect> effects = new ArrayList<>();
    plan.recommended()
        .centre()
        .ifPresent(to -> effects.add(centre(plan, plan.now().centre().orElseThrow(), to, units)));
    report
        .planned()
        .bowRise()
        .filter(rise -> rise.micrometres() != 0)
        .ifPresent(
            rise -> {
              boolean up = rise.micrometres() > 0;
              Length size = new Length(Math.abs(rise.micrometres()));
              String words = "the bow " + (up ? "rises " : "sinks ") + Spoken.length(size, units);
              effects.add(new Effect(words + " at rest", !up));
            });
    if (report.now().heelDegrees().isPresent()) {
      double now = report.now().heelDegrees().get();
      double then = report.planned().heelDegrees().orElseThrow();
      if (!degrees(now).equals(degrees(then))) {
        effects.add(
            new Effect(
                "heel goes from " + degrees(now) + " to " + degrees(then),
                Math.abs(then) > Math.abs(now)));
      }
    }
    plan.reach()
        .filter(reach -> !minutes(reach.nowMinutes()).equals(minutes(reach.plannedMinutes())))
        .ifPresent(
            reach ->
                effects.add(
                    new Effect(
                        "reaching for boxes goes from "
                            + minutes(reach.nowMinutes())
                            + " to "
                            + minutes(reach.plannedMinutes())
                            + " a day",
                        reach.plannedMinutes() > reach.nowMinutes())));
    return effects;
  }

  private static Effect centre(StowPlan plan, Length from, Length to, UnitSystem units) {
    long aft = from.micrometres() - to.micrometres();
    double possible = plan.now().momentKgM() - plan.best().orElseThrow().momentKgM();
    double gained = plan.now().momentKgM() - plan.recommended().momentKgM();
    String share =
        possible > 0 && gained > 0
            ? String.format(Locale.ROOT, ", %.0f %% of what is possible", 100 * gained / possible)
            : "";
    return new Effect(
        "the tackle's centre goes "
            + Spoken.length(new Length(Math.abs(aft)), units)
            + (aft >= 0 ? " aft (from " : " forward (from ")
            + Spoken.length(from, units)
            + " to "
            + Spoken.length(to, units)
            + " ahead of the transom)"
            + share,
        aft < 0);
  }

  private static String degrees(double angle) {
    String size = String.format(Locale.ROOT, "%.1f°", Math.abs(angle));
    return size.equals("0.0°") ? size : size + (angle > 0 ? " to starboard" : " to port");
  }

  static String minutes(double minutes) {
    return Phrase.count(Math.round(minutes), "minute", "minutes");
  }

  private static boolean broken(StowPlan plan) {
    return !plan.curve().isEmpty() && !plan.curve().get(0).feasible();
  }

  private static String proof(StowPlan plan) {
    if (plan.bestMoves() > 0) {
      return "no move brings enough to be worth its trouble.";
    }
    return plan.bestGapPercent() == 0
        ? "the present stow is proven best within the limits."
        : String.format(
            Locale.ROOT,
            "no better plan was found; one could lie at most %.2f %% further aft.",
            plan.bestGapPercent());
  }

  /** Says how far the best plan found is proven. */
  static String bestProof(StowPlan plan) {
    return plan.bestGapPercent() == 0
        ? "it is proven that none is better."
        : String.format(
            Locale.ROOT,
            "a better one could lie at most %.2f %% further aft.",
            plan.bestGapPercent());
  }

  /** A step as it is carried out. */
  static String instruction(MoveStep step) {
    return switch (step.kind()) {
      case MOVE ->
          number(step) + "Move " + step.box() + " from " + step.from() + " to " + step.to();
      case PUT_IN -> number(step) + "Put " + step.box() + ", lifted out before, into " + step.to();
      case LIFT_OUT ->
          "First lift "
              + step.box()
              + " out of "
              + step.from()
              + " and set it down outside; it goes"
              + " to "
              + step.to()
              + " later";
      case SWAP ->
          step.number().getAsInt()
              + " and "
              + (step.number().getAsInt() + 1)
              + ". Swap "
              + step.box()
              + " ("
              + step.from()
              + ") and "
              + step.swappedWith()
              + " ("
              + step.to()
              + "): lift both out, then put each where the other stood";
    };
  }

  private static String number(MoveStep step) {
    return step.number().getAsInt() + ". ";
  }
}
