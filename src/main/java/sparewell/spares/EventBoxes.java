package sparewell.spares;

import java.util.HashSet;
import java.util.Set;
import sparewell.season.Box;
import sparewell.season.Event;
import sparewell.season.Place;
import sparewell.season.Season;

/** The boxes that are packed for the events of a horizon. */
public final class EventBoxes {
  private EventBoxes() {}

  /** True for an event that names a box which does not stand ashore. */
  public static boolean packed(Season season, Event event) {
    if (event.box().isEmpty()) {
      return false;
    }
    Box box = season.boxesByName().get(event.box());
    return box == null || !season.ashore(new Place(box.name(), box.compartment()));
  }

  /**
   * Boxes out of which goes what their event does not want, where its pocket is needed: those whose
   * pockets are counted. Nothing else is put into them.
   */
  static Set<String> emptied(Season season, Horizon horizon) {
    Set<String> boxes = new HashSet<>();
    for (Event event : horizon.events()) {
      if (event.slots().isPresent() && packed(season, event)) {
        boxes.add(event.box());
      }
    }
    return boxes;
  }
}
