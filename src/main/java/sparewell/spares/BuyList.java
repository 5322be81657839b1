package sparewell.spares;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.finding.Finding;
import sparewell.season.ItemId;

/**
 * What to buy, first things first.
 *
 * @param budget money at hand, where set
 * @param currency ISO 4217 code
 * @param lines priced lines in the order to buy them (those within the budget first), then lines
 *     without a price
 * @param spent money for the lines within the budget
 * @param wanted money for all priced lines
 * @param within what the lines within the budget lead to
 * @param curve money against what it leads to, from nothing to all priced lines
 * @param more what further money would buy; absent where there is nothing more to buy
 * @param gapPieces most by which another choice within the budget could lower the
 *     importance-weighted expected shortage further; 0 where the choice is proven best
 * @param findings missing prices
 */
public record BuyList(
    Optional<BigDecimal> budget,
    String currency,
    List<Line> lines,
    BigDecimal spent,
    BigDecimal wanted,
    Point within,
    List<Point> curve,
    Optional<More> more,
    double gapPieces,
    List<Finding> findings) {
  public BuyList {
    lines = List.copyOf(lines);
    curve = List.copyOf(curve);
    findings = List.copyOf(findings);
  }

  /**
   * Packs of one item bought one after the other.
   *
   * @param rank place in the list, from 1
   * @param item which
   * @param forFloor whether the packs fill up to the floor
   * @param packs number of packs
   * @param pieces pieces in them
   * @param cost money for them; absent where the price is not known
   * @param cumulativeCost money for all lines down to this one; absent where the price is not known
   * @param shortageBeforePieces expected pieces of the item short over the horizon without this
   *     line
   * @param shortageAfterPieces the same with it
   * @param withinBudget whether the budget pays for it; without a budget always; with one, never
   *     where the price is not known
   */
  public record Line(
      int rank,
      ItemId item,
      boolean forFloor,
      int packs,
      int pieces,
      Optional<BigDecimal> cost,
      Optional<BigDecimal> cumulativeCost,
      double shortageBeforePieces,
      double shortageAfterPieces,
      boolean withinBudget) {}

  /**
   * What an amount of money leads to.
   *
   * @param money spent
   * @param shortagePieces expected pieces short over the horizon, all items, weighted with
   *     importance
   * @param nothingRunsOutProbability chance that nothing important runs out; absent where nothing
   *     is watched
   */
  public record Point(
      BigDecimal money, double shortagePieces, OptionalDouble nothingRunsOutProbability) {}

  /**
   * What further money would buy.
   *
   * @param money the further money
   * @param packs packs added and, where the better choice changes, taken back
   * @param outcome what it leads to
   */
  public record More(BigDecimal money, List<Change> packs, Point outcome) {
    public More {
      packs = List.copyOf(packs);
    }

    /** Packs of an item, and pieces in them, more (negative: fewer) than without that money. */
    public record Change(ItemId item, int packs, int pieces) {}
  }
}
