package sparewell.season;

import java.time.LocalDate;
import sparewell.finding.Cell;

/** A box moved from one compartment to another, or logged again in its own. */
public record BoxMove(LocalDate date, String box, String from, String to, Cell origin) {}
