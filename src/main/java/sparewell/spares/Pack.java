package sparewell.spares;

/**
 * One pack that could be bought.
 *
 * @param row position of its item among the rows
 * @param number which pack of the item, counted from 0
 * @param fills whether it only fills up to the floor: hardly anything of the item is expected short
 * @param costUnits price in the smallest unit of money in use, &ge; 0
 * @param savedPieces importance-weighted fall of expected shortage when it follows the item's packs
 *     before it
 */
record Pack(int row, int number, boolean fills, long costUnits, double savedPieces) {}
