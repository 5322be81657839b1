/** The track record: an angler's own history foreseen trip by trip, and how policies did. */
package sparewell.rates.record;
