/** XML parts edited as text, so that all that is not edited stays to the letter. */
package sparewell.save.xml;
