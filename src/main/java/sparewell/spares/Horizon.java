package sparewell.spares;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import sparewell.finding.Finding;
import sparewell.rates.Exposure;
import sparewell.season.Event;
import sparewell.season.Season;

/**
 * The stretch that stock must last for.
 *
 * @param events the events ahead that are planned together, in order of date; empty where planning
 *     hours are used
 * @param uses one for each style, in the order of the workbook
 * @param words what was taken and which events were joined, in an angler's words
 */
public record Horizon(
    List<Event> events, Map<String, Use> uses, String words, List<Finding> findings) {
  public Horizon {
    events = List.copyOf(events);
    uses = Collections.unmodifiableMap(new LinkedHashMap<>(uses));
    findings = List.copyOf(findings);
  }

  /**
   * Coming use of one style.
   *
   * @param stretches one for each event that uses it, or the planning hours; none where it is not
   *     used
   */
  public record Use(List<Exposure> stretches, boolean inPlan) {
    static final Use NONE = new Use(List.of(), false);

    public Use {
      stretches = List.copyOf(stretches);
    }

    /** Hours over all stretches, &ge; 0. */
    public double hours() {
      return stretches.stream().mapToDouble(Exposure::hours).sum();
    }
  }

  /**
   * Boxes out of which goes what their event does not want, where its pocket is needed: those whose
   * pockets are counted. Nothing else is put into them.
   */
  Set<String> emptied(Season season) {
    return events.stream()
        .filter(event -> event.slots().isPresent() && season.packs(event))
        .map(Event::box)
        .collect(Collectors.toSet());
  }

  /** Use of a style; {@link Use#NONE} for an unknown one. */
  public Use use(String style) {
    return uses.getOrDefault(style, Use.NONE);
  }
}
