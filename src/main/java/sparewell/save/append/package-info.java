/** Rows added below the angler's tables, as an import asks for them. */
package sparewell.save.append;
