/**
 * Experience as CSV files: read as what anybody may have written, and written.
 *
 * <p>No arithmetic on what they say: that is done in {@code experience}.
 */
package sparewell.experience.file;
