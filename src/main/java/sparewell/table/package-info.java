/**
 * Result tables and sheets as data: columns declared once, rendered as sheet and as CSV from that.
 *
 * <p>No word of tackle here. Finding is known for links to cells alone.
 */
package sparewell.table;
