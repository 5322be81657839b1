/** The records of a season: immutable, typed, references resolved. */
package sparewell.season;
