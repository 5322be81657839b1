package sparewell.spares;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Chooses packs within a budget for the largest total saving.
 *
 * <p>Since the packs of an item cost the same and save less one after the other, this is the 0/1
 * knapsack problem. Undominated partial choices are kept and those whose linear bound cannot beat
 * the best choice known are dropped (Nemhauser and Ullmann 1969; bound of Dantzig 1957; both from
 * memory); started from marginal analysis. The answer is exact unless more than {@value #MOST}
 * choices stay open; then {@link Choice#gap} bounds what may be missing.
 */
final class PackKnapsack {
  private static final int MOST = 200_000;
  private static final double TOLERANCE = 1e-12;

  private final List<Pack> packs;
  private final long budget;
  private final double[] saved; // saved[i]: sum over packs before i
  private final long[] cost;
  private final long[] cheapest; // cheapest[i]: of the packs from i on

  private PackKnapsack(List<Pack> packs, long budget) {
    this.packs = packs;
    this.budget = budget;
    this.saved = new double[packs.size() + 1];
    this.cost = new long[packs.size() + 1];
    this.cheapest = new long[packs.size() + 1];
    cheapest[packs.size()] = Long.MAX_VALUE;
    for (int i = packs.size() - 1; i >= 0; i--) {
      cheapest[i] = Math.min(cheapest[i + 1], packs.get(i).costUnits());
    }
    for (int i = 0; i < packs.size(); i++) {
      saved[i + 1] = saved[i] + packs.get(i).savedPieces();
      cost[i + 1] = cost[i] + packs.get(i).costUnits();
    }
  }

  /**
   * A choice of packs.
   *
   * @param gap most by which another choice could save more, pieces; 0 where proven best
   */
  record Choice(List<Pack> packs, double gap) {}

  /**
   * The best choice within the budget.
   *
   * @param packs in any order; the packs of an item must cost the same and save no more one after
   *     the other
   */
  static Choice choose(List<Pack> packs, long budget) {
    return choose(packs, budget, MOST);
  }

  static Choice choose(List<Pack> packs, long budget, int most) {
    // An item's later packs come after its earlier ones: those the money never reaches go.
    Map<Integer, Long> spent = new HashMap<>();
    List<Pack> useful =
        packs.stream()
            .filter(pack -> pack.savedPieces() > 0)
            .sorted(byEfficiency())
            .filter(pack -> spent.merge(pack.row(), pack.costUnits(), Long::sum) <= budget)
            .toList();
    return new PackKnapsack(useful, budget).solve(most);
  }

  /** Most saved per money first; packs of an item in their order. */
  static Comparator<Pack> byEfficiency() {
    return Comparator.comparingDouble(PackKnapsack::efficiency)
        .reversed()
        .thenComparing(Comparator.comparingDouble(Pack::savedPieces).reversed())
        .thenComparingInt(Pack::number)
        .thenComparingInt(Pack::row);
  }

  private static double efficiency(Pack pack) {
    return pack.savedPieces() == 0 ? 0 : pack.savedPieces() / pack.costUnits();
  }

  private record State(long cost, double saved, State before, int pack) {}

  private Choice solve(int most) {
    if (cost[packs.size()] <= budget) {
      return new Choice(packs, 0);
    }
    State empty = new State(0, 0, null, -1);
    State best = completed(empty, 0);
    List<State> open = List.of(empty);
    double lost = 0;
    for (int i = 0; i < packs.size() && !open.isEmpty(); i++) {
      int at = i + 1;
      double least = best.saved + TOLERANCE;
      List<State> kept =
          merged(open, i).stream().filter(state -> bound(state, at) > least).toList();
      if (kept.size() > most) {
        List<State> byBound =
            kept.stream().sorted(Comparator.comparingDouble(state -> -bound(state, at))).toList();
        lost = Math.max(lost, bound(byBound.get(most), at));
        kept = byBound.stream().limit(most).sorted(Comparator.comparingLong(State::cost)).toList();
      }
      Optional<State> hopeful =
          kept.stream().max(Comparator.comparingDouble(state -> bound(state, at)));
      if (hopeful.isPresent()) {
        State whole = completed(hopeful.get(), at);
        best = whole.saved > best.saved + TOLERANCE ? whole : best;
      }
      open = kept;
    }
    return new Choice(listed(best), Math.max(0, lost - best.saved));
  }

  /**
   * All choices with and without pack i, by cost; one that costs no less and saves no more goes.
   */
  private List<State> merged(List<State> open, int i) {
    Pack pack = packs.get(i);
    List<State> both = new ArrayList<>(open.size() * 2);
    int with = 0;
    int without = 0;
    double most = -1;
    while (without < open.size() || with < open.size()) {
      State next;
      if (without < open.size()
          && (with == open.size()
              || open.get(without).cost <= open.get(with).cost + pack.costUnits())) {
        next = open.get(without++);
      } else {
        State from = open.get(with++);
        next = new State(from.cost + pack.costUnits(), from.saved + pack.savedPieces(), from, i);
      }
      if (next.cost <= budget && next.saved > most + TOLERANCE) {
        both.add(next);
        most = next.saved;
      }
    }
    return both;
  }

  /** The choice filled up with packs from i on that still fit, in order of efficiency. */
  private State completed(State state, int from) {
    State whole = state;
    for (int i = from; i < packs.size() && cheapest[i] <= budget - whole.cost; i++) {
      Pack pack = packs.get(i);
      if (whole.cost + pack.costUnits() <= budget) {
        whole =
            new State(whole.cost + pack.costUnits(), whole.saved + pack.savedPieces(), whole, i);
      }
    }
    return whole;
  }

  /** Most that a choice and packs from i on can save, were the last one divisible. */
  private double bound(State state, int from) {
    long money = budget - state.cost;
    int at = Arrays.binarySearch(cost, from, cost.length, cost[from] + money);
    int whole = at >= 0 ? at : -at - 2;
    double sure = state.saved + (saved[whole] - saved[from]);
    if (whole == packs.size()) {
      return sure;
    }
    double left = money - (double) (cost[whole] - cost[from]);
    Pack next = packs.get(whole);
    return sure + next.savedPieces() * left / next.costUnits();
  }

  private List<Pack> listed(State best) {
    List<Pack> list = new ArrayList<>();
    for (State state = best; state.before != null; state = state.before) {
      list.add(packs.get(state.pack));
    }
    Collections.reverse(list);
    return list;
  }
}
