package sparewell.stow;

import sparewell.units.Mass;

/**
 * Stock that lies loose in a compartment.
 *
 * @param compartment name of the compartment
 * @param weight as far as known: the true weight is at least this
 * @param pieces pieces lying loose
 * @param unknownPieces those of them whose weight is not known
 */
public record LooseLoad(String compartment, Mass weight, int pieces, int unknownPieces) {}
