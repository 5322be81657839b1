/**
 * What is on hand now: counts less losses plus restocks, by place, with its weight.
 *
 * <p>First of the analyses; all others read its records. May import season, units and finding.
 */
package sparewell.stock;
