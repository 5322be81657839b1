/** Tables of data that stand as text beside the classes that use them. */
package sparewell.declared;
