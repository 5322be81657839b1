/**
 * Stock on hand now: counts less losses plus restocks, by place, with its weight.
 *
 * <p>First of the analyses; all but rates read its records. Nothing is estimated or advised here.
 */
package sparewell.stock;
