package sparewell.season;

import java.time.LocalDate;
import sparewell.finding.Cell;

/**
 * A box moved to another compartment, or logged again in its own.
 *
 * @param date when
 * @param box its name
 * @param from the compartment it stood in before
 * @param to the compartment it stood in after
 * @param origin its row
 */
public record BoxMove(LocalDate date, String box, String from, String to, Cell origin) {}
