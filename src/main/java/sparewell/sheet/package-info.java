/**
 * The output sheets, one class each: which tables, texts and drawings stand on them.
 *
 * <p>May import table, the result records of all analyses, season, finding and units.
 */
package sparewell.sheet;
