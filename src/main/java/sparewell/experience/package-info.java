/**
 * What other logs tell: rows of experience pooled by key, random effects between anglers, and what
 * follows for one more angler.
 *
 * <p>Pure arithmetic on keys and numbers; files are read and written in {@code experience.file}.
 */
package sparewell.experience;
