package sparewell.workbook.importing;

import java.util.List;

/**
 * A row of a file that cannot be used.
 *
 * @param line the line of the file it begins on, counted from 1
 * @param reason what is wrong with it, a sentence without its full stop
 */
public record Rejected(long line, List<String> cells, String reason) {}
