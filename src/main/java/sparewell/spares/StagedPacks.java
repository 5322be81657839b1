package sparewell.spares;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import sparewell.numerics.CountDistribution;

/**
 * Packs to have bought before each of several events.
 *
 * <p>The chance of ever running out is at most the sum, over the events before which more is bought
 * and the last, of P(losses through the event before &gt; stock then) (Boole's inequality; between
 * two purchases only the last event counts, as running losses never fall). First as few packs as
 * keep the last of these within its share of what is allowed, then as late as the rest allows. The
 * bound buys more than is wanted, as losses at one event and the next share a rate: from there
 * packs are left out, the last ones first, as long as the joint chance stays.
 */
final class StagedPacks {
  /**
   * Share of the risk that the last event may have; the rest lets purchases wait. Set by the
   * benchmark of seasons ahead: with all of it, and 8 trips logged, 91 % lasted where 95 were
   * wanted, and most had to be bought before the first event.
   */
  private static final double LAST_SHARE = 0.6;

  private StagedPacks() {}

  /**
   * Packs bought in all before each event, never falling.
   *
   * @param losses pieces lost from now through each event
   * @param chance wanted chance of not running out at any event, in (0, 1)
   * @param lasts joint chance that so many packs bought in all before each event last through all
   */
  static int[] of(
      List<CountDistribution> losses,
      int held,
      int perPack,
      double chance,
      ToDoubleFunction<int[]> lasts) {
    int[] packs = bounded(losses, held, perPack, chance);
    int tooFew = -1;
    int enough = packs[packs.length - 1];
    while (enough - tooFew > 1) { // more packs never lower the chance
      int middle = (enough + tooFew) / 2;
      if (lasts.applyAsDouble(atMost(middle, packs)) < chance) {
        tooFew = middle;
      } else {
        enough = middle;
      }
    }
    return atMost(enough, packs);
  }

  private static int[] atMost(int most, int[] packs) {
    return Arrays.stream(packs).map(some -> Math.min(some, most)).toArray();
  }

  private static int[] bounded(
      List<CountDistribution> losses, int held, int perPack, double chance) {
    int last = losses.size() - 1;
    int[] packs = new int[losses.size()];
    packs[last] = least(losses.get(last), held, perPack, LAST_SHARE * (1 - chance));
    double left = 1 - chance - losses.get(last).above(held + packs[last] * perPack) + 1e-12;
    int[] early = postponed(losses, held, perPack, packs[last], left, true);
    int[] late = postponed(losses, held, perPack, packs[last], left, false);
    return Arrays.stream(early).sum() <= Arrays.stream(late).sum() ? early : late;
  }

  /** Postpones with the risk that is left: in equal parts, or to the latest events first. */
  private static int[] postponed(
      List<CountDistribution> losses, int held, int perPack, int all, double risk, boolean parts) {
    int last = losses.size() - 1;
    int[] packs = new int[losses.size()];
    packs[last] = all;
    double left = risk;
    for (int k = last - 1; k >= 0; k--) {
      int fewest = least(losses.get(k), held, perPack, parts ? left / (k + 1) : left);
      packs[k] = Math.min(fewest, packs[k + 1]);
      if (packs[k] < packs[k + 1]) {
        left -= losses.get(k).above(held + packs[k] * perPack);
      }
    }
    return packs;
  }

  /** Fewest packs with which the chance to run out is within the risk. */
  private static int least(CountDistribution losses, int held, int perPack, double risk) {
    if (risk <= 0) {
      return Integer.MAX_VALUE;
    }
    int missing = losses.quantile(Math.max(1e-9, 1 - risk)) - held;
    return Math.max(0, (missing + perPack - 1) / perPack);
  }
}
