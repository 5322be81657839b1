/** Replaces a file so that the whole old or the whole new one is there at any moment. */
package sparewell.save.file;
