package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
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
    List<String> gains = new ArrayList<>();
    List<String> worse = new ArrayList<>();
    for (Effect effect : effects(plan, report, units)) {
      (effect.worse() ? worse : gains).add(effect.words());
    }
    if (!plan.curve().isEmpty() && !plan.curve().get(0).feasible()) {
      gains.add("every limit is kept again");
    }
    return Phrase.text(
        "Move %s: %s%s%s%s.",
        Phrase.count(plan.recommendedMoves(), "box", "boxes"),
        String.join("; ", gains),
        gains.isEmpty() || worse.isEmpty() ? "" : ". ",
        worse.isEmpty() ? "" : "Worse: ",
        String.join("; ", worse));
  }

  private record Effect(String words, boolean worse) {}

  /** Centre, bow, heel and reach; what is not known is left out. */
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
    report
        .now()
        .heelDegrees()
        .map(now -> heel(now, report.planned().heelDegrees().orElseThrow()))
        .ifPresent(effects::add);
    plan.reach()
        .filter(reach -> !minutes(reach.nowMinutes()).equals(minutes(reach.plannedMinutes())))
        .ifPresent(
            reach ->
                effects.add(
                    new Effect(
                        Phrase.text(
                            "reaching for boxes goes from %s to %s a day",
                            minutes(reach.nowMinutes()), minutes(reach.plannedMinutes())),
                        reach.plannedMinutes() > reach.nowMinutes())));
    return effects;
  }

  private static Effect heel(double now, double then) {
    boolean stays = degrees(now).equals(degrees(then));
    return new Effect(
        stays
            ? "heel stays " + degrees(now)
            : "heel goes from " + degrees(now) + " to " + degrees(then),
        !stays && Math.abs(then) > Math.abs(now));
  }

  private static Effect centre(StowPlan plan, Length from, Length to, UnitSystem units) {
    long aft = from.micrometres() - to.micrometres();
    double possible = plan.now().momentKgM() - plan.best().orElseThrow().momentKgM();
    double gained = plan.now().momentKgM() - plan.recommended().momentKgM();
    return new Effect(
        Phrase.text(
            "the tackle's centre goes %s %s (from %s to %s ahead of the transom)%s",
            Spoken.length(new Length(Math.abs(aft)), units),
            aft >= 0 ? "aft" : "forward",
            Spoken.length(from, units),
            Spoken.length(to, units),
            possible > 0 && gained > 0
                ? Phrase.text(", %.0f %% of what is possible", 100 * gained / possible)
                : ""),
        aft < 0);
  }

  private static String degrees(double angle) {
    String size = Phrase.text("%.1f°", Math.abs(angle));
    return size.equals("0.0°") ? size : size + (angle > 0 ? " to starboard" : " to port");
  }

  static String minutes(double minutes) {
    return Phrase.count(Math.round(minutes), "minute", "minutes");
  }

  private static String proof(StowPlan plan) {
    if (plan.bestMoves() > 0) {
      return "no move brings enough to be worth its trouble.";
    }
    return plan.bestGapPercent() == 0
        ? "the present stow is proven best within the limits."
        : Phrase.text(
            "no better plan was found; one could lie at most %.2f %% further aft.",
            plan.bestGapPercent());
  }

  static String bestProof(StowPlan plan) {
    return plan.bestGapPercent() == 0
        ? "it is proven that none is better."
        : Phrase.text("a better one could lie at most %.2f %% further aft.", plan.bestGapPercent());
  }

  static String instruction(MoveStep step) {
    String box = step.box();
    int number = step.number().orElse(0);
    return switch (step.kind()) {
      case MOVE -> Phrase.text("%d. Move %s from %s to %s", number, box, step.from(), step.to());
      case PUT_IN -> Phrase.text("%d. Put %s, lifted out before, into %s", number, box, step.to());
      case LIFT_OUT ->
          Phrase.text(
              "First lift %s out of %s and set it down outside; it goes to %s later",
              box, step.from(), step.to());
      case SWAP ->
          Phrase.text(
              "%d and %d. Swap %s (%s) and %s (%s): lift both out, then put each where the other"
                  + " stood",
              number, number + 1, box, step.from(), step.swappedWith(), step.to());
    };
  }
}
