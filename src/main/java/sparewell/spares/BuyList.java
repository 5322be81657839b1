package sparewell.spares;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.finding.Finding;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.stock.OnHand;
import sparewell.stock.PieceMove;

/**
 * The purchases, in the order to make them.
 *
 * @param currency ISO 4217 code
 * @param lines in the order to buy them: what lowers the expected shortage, then what only fills
 *     floors; in each part first what is bought, then what else has a price, then what has none
 * @param spent money for the lines within the budget
 * @param wanted money for all priced lines
 * @param without what nothing bought leads to
 * @param needed what the lines bought lead to that do not only fill floors
 * @param within what all lines bought lead to
 * @param curve money against what it leads to, from nothing to all priced lines that losses ask for
 * @param more what the next money would buy; absent where there is nothing more to buy, or money is
 *     left
 * @param gapPieces most by which another choice within the budget could lower the
 *     importance-weighted expected shortage further; 0 where the choice is proven best
 * @param bought what will be on hand once those lines are bought
 */
public record BuyList(
    Optional<BigDecimal> budget,
    String currency,
    List<Line> lines,
    BigDecimal spent,
    BigDecimal wanted,
    Point without,
    Point needed,
    Point within,
    List<Point> curve,
    Optional<More> more,
    double gapPieces,
    OnHand bought,
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
   * @param fills whether the packs only fill up to the floor, since hardly any loss would meet them
   * @param cost money for them; absent where the price is not known
   * @param cumulativeCost money for all lines down to this one; absent where the price is not known
   * @param shortageBeforePieces expected pieces of the item short over the horizon without this
   *     line
   * @param shortageAfterPieces the same with it
   * @param bought whether to buy it now: the budget pays for it, or none is set
   * @param into the place aboard where the item belongs; absent where there is no place aboard
   * @param open whether another place aboard would do as well
   */
  public record Line(
      int rank,
      ItemId item,
      boolean fills,
      int packs,
      int pieces,
      Optional<BigDecimal> cost,
      Optional<BigDecimal> cumulativeCost,
      double shortageBeforePieces,
      double shortageAfterPieces,
      boolean bought,
      Optional<Place> into,
      boolean open) {
    /** True where the budget pays for it, or none is set; absent where the price is not known. */
    public Optional<Boolean> withinBudget() {
      return cost.map(money -> bought);
    }

    public PieceMove move() {
      return new PieceMove(item, pieces, Optional.empty(), into.orElse(PieceMove.OF_CHOICE));
    }
  }

  /** Lines that lower the expected shortage, or that only fill floors. */
  public List<Line> part(boolean fills) {
    return lines.stream().filter(line -> line.fills() == fills).toList();
  }

  /**
   * Outcome of an amount of money.
   *
   * @param shortagePieces expected pieces short over the horizon, all items, weighted with
   *     importance
   * @param nothingRunsOutProbability chance that nothing important runs out; absent where nothing
   *     is watched
   */
  public record Point(
      BigDecimal money, double shortagePieces, OptionalDouble nothingRunsOutProbability) {}

  /**
   * Purchases with the next money, after what is in hand.
   *
   * @param first whether no money is in hand, so that it is the first
   * @param packs packs added and, where the better choice changes, taken back
   */
  public record More(
      BigDecimal money, boolean first, List<Change> packs, Point before, Point outcome) {
    public More {
      packs = List.copyOf(packs);
    }

    /** Packs of an item, and pieces in them, more (negative: fewer) than without that money. */
    public record Change(ItemId item, int packs, int pieces) {}
  }
}
