/** Reads and writes files of experience, which anybody may have written. */
package sparewell.experience.file;
