/** What was typed on our sheets, as rows of the angler's; nothing is read or written here. */
package sparewell.posting;
