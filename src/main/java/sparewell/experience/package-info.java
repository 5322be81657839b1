/** Experience of other logs: pure arithmetic on keys and numbers. */
package sparewell.experience;
