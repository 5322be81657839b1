/**
 * Declarations of the input sheets ({@link sparewell.workbook.InputSheets}).
 *
 * <p>Reading is done in the packages below; no analysis.
 */
package sparewell.workbook;
