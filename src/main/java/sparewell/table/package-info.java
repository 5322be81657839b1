/** Result tables and sheets as data: each column is declared once, for sheet and CSV. */
package sparewell.table;
