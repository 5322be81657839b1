package sparewell.spares;

import java.util.List;
import sparewell.season.Event;
import sparewell.season.Settings;
import sparewell.season.Style;

/** The wanted chance in force: the command line's, the style's, the event's, the setting's. */
final class ChanceWanted {
  private ChanceWanted() {}

  /**
   * The chance wanted for the items of a style.
   *
   * @param events the events planned together; where they ask for different chances the highest
   *     holds, and an event that asks for none asks for the setting's
   */
  static double of(Settings settings, List<Event> events, Style style) {
    if (settings.chanceFromCommandLine()) {
      return settings.chanceWantedProbability();
    }
    if (style.chanceWantedProbability().isPresent()) {
      return style.chanceWantedProbability().getAsDouble();
    }
    return events.stream()
        .mapToDouble(
            event -> event.chanceWantedProbability().orElse(settings.chanceWantedProbability()))
        .max()
        .orElse(settings.chanceWantedProbability());
  }
}
