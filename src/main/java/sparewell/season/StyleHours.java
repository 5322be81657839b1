package sparewell.season;

import sparewell.finding.Cell;

/** Hours a style was thrown on a trip, &ge; 0; {@code trip} is the trip's id. */
public record StyleHours(String trip, String style, double thrownHours, Cell origin) {}
