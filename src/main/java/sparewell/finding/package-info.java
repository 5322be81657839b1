/**
 * Messages about the angler's input and about results, as data, each with its place.
 *
 * <p>Imports nothing of the project.
 */
package sparewell.finding;
