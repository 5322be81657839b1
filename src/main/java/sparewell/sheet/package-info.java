/**
 * The output sheets: one class each, which declares its columns once and fills them from results.
 *
 * <p>May import table, season, units, finding and the result records of all analyses.
 */
package sparewell.sheet;
