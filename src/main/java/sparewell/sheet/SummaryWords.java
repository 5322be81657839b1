package sparewell.sheet;

import java.util.Map;

/** The load summary's quantities in an angler's words. */
final class SummaryWords {
  private static final Map<String, String> WORDS =
      Map.ofEntries(
          Map.entry("tackle_weight", "Tackle: weight"),
          Map.entry("tackle_centre_from_transom", "Tackle: centre, forward of the transom"),
          Map.entry("tackle_centre_from_centreline", "Tackle: centre, starboard of the centreline"),
          Map.entry("all_up_weight", "All-up: weight"),
          Map.entry("all_up_centre_from_transom", "All-up: centre, forward of the transom"),
          Map.entry("all_up_centre_from_centreline", "All-up: centre, starboard of the centreline"),
          Map.entry("plate_weight", "Plate, total line"),
          Map.entry("plate_load", "Load that counts toward it"),
          Map.entry("plate_margin", "Margin to it (negative = over)"),
          Map.entry("plate_persons_weight", "Plate, persons line"),
          Map.entry("plate_persons_load", "Persons aboard"),
          Map.entry("plate_persons_margin", "Margin to it for persons (negative = over)"),
          Map.entry("best_tackle_centre", "Tackle: centre in the best stow plan found"),
          Map.entry("bow_change_per_plan", "Bow at rest with the recommended moves, up positive"),
          Map.entry("heel_now_deg", "Heel now, starboard down positive"),
          Map.entry("heel_with_plan_deg", "Heel with the recommended moves"));

  private SummaryWords() {}

  /** The words for a quantity. */
  static String of(String quantity) {
    return WORDS.getOrDefault(quantity, quantity);
  }
}
