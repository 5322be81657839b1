package sparewell.ooxml;

import java.util.Optional;

/**
 * A sheet as the workbook lists it.
 *
 * @param partName the part that holds it; empty where the workbook lists a sheet that it does not
 *     hold
 * @param visible whether its tab is shown
 * @param worksheet whether it has cells (chart, dialog and macro sheets have none for us)
 * @param own whether an earlier run wrote it and its tab still has the name given then; a copied or
 *     renamed sheet is the angler's
 */
public record SheetEntry(
    String name,
    Optional<String> partName,
    boolean visible,
    boolean worksheet,
    boolean own,
    int sheetId) {}
