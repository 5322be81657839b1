package sparewell.spares;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import sparewell.numerics.CountDistribution;
import sparewell.season.ItemId;

/**
 * Pieces to carry of one item, to bring and to buy.
 *
 * @param ashore pieces in home storage now
 * @param planningHours hours its style is used over the horizon
 * @param losses pieces of the item lost over the horizon
 * @param used whether the item is used over the horizon at all
 * @param floor least pieces to carry
 * @param carry pieces to carry: the least that gives the wanted chance, never under the floor
 * @param reason which of them binds
 * @param buyPacks whole packs to buy for what is still short
 */
public record SparesRow(
    ItemId item,
    int aboard,
    int ashore,
    double planningHours,
    CountDistribution losses,
    boolean used,
    double importance,
    double chanceWantedProbability,
    int floor,
    int carry,
    Reason reason,
    int bringAboard,
    int buyPacks,
    int piecesPerPack,
    Optional<BigDecimal> packPrice) {
  private static final int MOST_LOTS = 1_000;

  public enum Reason {
    FLOOR,
    LOSS_RATE,
    NEEDED_AT_ONCE,
    EVENT_PLAN;

    public String words() {
      return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
  }

  /** Expected losses over the horizon, pieces, &ge; 0. */
  public double expectedLossPieces() {
    return losses.mean();
  }

  /** P(losses &gt; aboard), 0..1. */
  public double runOutNowProbability() {
    return losses.above(aboard);
  }

  /** P(losses &gt; carry), 0..1; at most 1 - the chance wanted. */
  public double runOutAtCarryProbability() {
    return losses.above(carry);
  }

  /** Pieces aboard once what lies ashore was brought. */
  public int aboardAfterBringing() {
    return aboard + bringAboard;
  }

  /**
   * Packs that are bought or not as one. One, but an item short of thousands is bought in about a
   * thousand lots: a choice of so many packs is not one of single packs.
   */
  int packsInLot() {
    return lot(buyPacks);
  }

  private static int lot(int packs) {
    return 1 + (packs - 1) / MOST_LOTS;
  }

  static int wholeLots(int packs) {
    int lot = lot(packs);
    return (packs + lot - 1) / lot * lot;
  }

  public int buyPieces() {
    return buyPacks * piecesPerPack;
  }

  /** Money for all packs to buy; absent where there are some and their price is not known. */
  public Optional<BigDecimal> cost() {
    return buyPacks == 0
        ? Optional.of(BigDecimal.ZERO)
        : packPrice.map(price -> price.multiply(BigDecimal.valueOf(buyPacks)));
  }

  /**
   * Fall of the expected shortage by bringing pieces aboard: importance x (E(losses - aboard)+ -
   * E(losses - aboard after bringing)+), pieces times importance, &ge; 0.
   */
  public double shortageSavedByBringing() {
    return importance
        * (losses.expectedShortage(aboard) - losses.expectedShortage(aboardAfterBringing()));
  }
}
