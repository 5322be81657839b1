/** Replacing one file by another so that the old or the new one stands there at any moment. */
package sparewell.save.file;
