/**
 * One invented angler: tackle, boat and a simulated log whose true loss rates are known.
 *
 * <p>Nothing here describes a real person, brand, lure model or water.
 */
package sparewell.workbook.demo;
