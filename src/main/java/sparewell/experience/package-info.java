/**
 * Experience of other logs: rows pooled by key, random effects between anglers, and the prior of a
 * further angler.
 *
 * <p>Pure arithmetic on keys and numbers; files are read and written in {@code experience.file}.
 */
package sparewell.experience;
