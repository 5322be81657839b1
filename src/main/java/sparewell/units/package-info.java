/** Quantities with a unit (mass, length) and the two unit systems an angler may choose. */
package sparewell.units;
