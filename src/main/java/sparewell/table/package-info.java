/**
 * Result tables and sheets as data: columns declared once, rendered as sheet and as CSV from that.
 *
 * <p>No word of tackle here. May import units and finding (for links to cells).
 */
package sparewell.table;
