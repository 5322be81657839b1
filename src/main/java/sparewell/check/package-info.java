/** Rules over a whole season: probable slips, and facts to know before trusting a result. */
package sparewell.check;
