/**
 * Reads and writes files of experience, which anybody may have written.
 *
 * <p>The arithmetic is in {@code experience}.
 */
package sparewell.experience.file;
