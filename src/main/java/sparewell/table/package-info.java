/**
 * Result tables and sheets as data: each column is declared once, for sheet and CSV.
 *
 * <p>Knows nothing of tackle, and findings only for links to cells.
 */
package sparewell.table;
