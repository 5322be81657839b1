/** Messages about the angler's input and about results, as data, each with its place. */
package sparewell.finding;
