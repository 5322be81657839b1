/** Stock on hand now, by place, with its weight; nothing is estimated here. */
package sparewell.stock;
