/**
 * Quantities with a unit (mass, length) and the two unit systems an angler may choose.
 *
 * <p>Knows nothing of tackle, workbooks or findings; imports nothing of the project.
 */
package sparewell.units;
