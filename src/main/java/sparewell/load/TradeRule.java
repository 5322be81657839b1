package sparewell.load;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import sparewell.load.LoadReport.TradeNote;
import sparewell.season.Compartment;
import sparewell.season.Season;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;
import sparewell.stow.BoxPlan;
import sparewell.stow.Reason;
import sparewell.stow.Refusal;
import sparewell.stow.StowPlan;
import sparewell.units.Length;
import sparewell.units.Mass;
import sparewell.units.MassUnit;

/** Finds boxes that stand against 'light forward, heavy aft' (common practice, no source). */
final class TradeRule {
  private static final Mass FEATHERWEIGHT = Mass.of(1, MassUnit.POUND);
  private static final double LEAST_SHIFT = 0.01;

  private TradeRule() {}

  /**
   * One note for each box that is heavier than the median box aboard and stands ahead of the middle
   * between the hindmost and the foremost compartment, or lighter and behind it; heaviest first. It
   * must matter: a median box in the middle in its stead would shift the tackle's centre by a
   * hundredth of the way between these two compartments. A featherweight, and a box that stands
   * well by the plan, is never noted.
   */
  static List<TradeNote> notes(Season season, OnHand onHand, StowPlan plan) {
    List<Compartment> aboard =
        season.compartments().stream().filter(place -> !place.ashore()).toList();
    boolean withheld = plan.refusal().orElse(null) instanceof Refusal.Outside;
    if (withheld || plan.boxes().isEmpty() || aboard.isEmpty()) {
      return List.of();
    }
    Map<String, Length> station = new HashMap<>();
    aboard.forEach(place -> station.put(place.name(), place.fromTransom()));
    long low = station.values().stream().mapToLong(Length::micrometres).min().orElse(0);
    long high = station.values().stream().mapToLong(Length::micrometres).max().orElse(0);
    double middle = (low + high) / 2.0;
    double median = medianMilligrams(plan.boxes());
    Map<String, String> mainStyle = mainStyles(onHand);
    List<TradeNote> notes = new ArrayList<>();
    for (BoxPlan box : plan.boxes()) {
      double ahead = station.get(box.fromCompartment()).micrometres() - middle;
      double heavier = box.weight().milligrams() - median;
      double shift = ahead * heavier / (plan.now().weightKg() * 1e6);
      boolean feather = box.weight().compareTo(FEATHERWEIGHT) < 0;
      if (shift > LEAST_SHIFT * (high - low) && !feather && box.reason() != Reason.STANDS_WELL) {
        notes.add(
            new TradeNote(
                box.box(),
                box.weight(),
                box.fromCompartment(),
                ahead > 0,
                Optional.ofNullable(mainStyle.get(box.box())),
                box.moves() ? Optional.of(box.toCompartment()) : Optional.empty()));
      }
    }
    notes.sort(Comparator.comparing(TradeNote::weight).reversed().thenComparing(TradeNote::box));
    return notes;
  }

  private static double medianMilligrams(List<BoxPlan> boxes) {
    long[] weights = boxes.stream().mapToLong(box -> box.weight().milligrams()).sorted().toArray();
    int half = weights.length / 2;
    return weights.length % 2 == 1 ? weights[half] : (weights[half - 1] + weights[half]) / 2.0;
  }

  /** The style that weighs most in each box; of equals the first by name. */
  private static Map<String, String> mainStyles(OnHand onHand) {
    Map<String, Map<String, Mass>> byBox = new HashMap<>();
    for (Holding holding : onHand.holdings()) {
      if (!holding.place().loose() && holding.weight().isPresent()) {
        byBox
            .computeIfAbsent(holding.place().box(), box -> new TreeMap<>())
            .merge(holding.item().style(), holding.weight().get(), Mass::plus);
      }
    }
    Map<String, String> main = new HashMap<>();
    byBox.forEach(
        (box, styles) ->
            styles.entrySet().stream()
                .filter(style -> style.getValue().milligrams() > 0)
                .min(Map.Entry.comparingByValue(Comparator.reverseOrder()))
                .ifPresent(heaviest -> main.put(box, heaviest.getKey())));
    return main;
  }
}
