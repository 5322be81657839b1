package sparewell.spares;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Cuts what rows are short of into packs, and money into whole units. */
final class PackSource {
  private static final int MOST_DECIMALS = 4;

  /** Expected pieces short under which a pack below the floor counts as filling it. */
  private static final double HARDLY_SHORT = 0.005;

  /** Packs beyond those wanted that are looked at, for each item. */
  private static final int MOST_BEYOND = 1_000;

  private final List<SparesRow> rows;
  private final int decimals;

  PackSource(List<SparesRow> rows, Optional<BigDecimal> budget) {
    this.rows = rows;
    int most = budget.map(BigDecimal::scale).orElse(0);
    for (SparesRow row : rows) {
      most = Math.max(most, row.packPrice().map(BigDecimal::scale).orElse(0));
    }
    this.decimals = Math.max(2, Math.min(MOST_DECIMALS, most));
  }

  /** The packs of all rows with a known price, in the order to buy them. */
  List<Pack> wanted() {
    List<Pack> packs = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      int lot = rows.get(i).packsInLot();
      for (int k = 0; k < rows.get(i).buyPacks() && rows.get(i).packPrice().isPresent(); k += lot) {
        packs.add(pack(i, k));
      }
    }
    packs.sort(order());
    return packs;
  }

  /** Packs beyond what is wanted that still save something, each item up to the budget alone. */
  List<Pack> beyond(long budget) {
    List<Pack> packs = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      if (rows.get(i).packPrice().isEmpty()) {
        continue;
      }
      long left = budget;
      int lot = rows.get(i).packsInLot();
      for (int k = rows.get(i).buyPacks();
          k < rows.get(i).buyPacks() + MOST_BEYOND * lot;
          k += lot) {
        Pack pack = pack(i, k);
        left -= pack.costUnits();
        if (left < 0 || pack.savedPieces() < 1e-6) {
          break;
        }
        packs.add(pack);
      }
    }
    return packs;
  }

  /**
   * Most saved per money first, what only fills floors last; where nothing is saved, the more
   * important and the emptier item first.
   */
  private Comparator<Pack> order() {
    return Comparator.comparing(Pack::fills)
        .thenComparing(
            (one, other) ->
                one.savedPieces() <= 0 && other.savedPieces() <= 0
                    ? idle().compare(one, other)
                    : PackKnapsack.byEfficiency().compare(one, other));
  }

  private Comparator<Pack> idle() {
    return Comparator.comparingDouble((Pack pack) -> -rows.get(pack.row()).importance())
        .thenComparingInt(this::held)
        .thenComparingInt(Pack::row);
  }

  int held(Pack pack) {
    return held(rows.get(pack.row()), pack.number());
  }

  private static int held(SparesRow row, int packs) {
    return row.aboardAfterBringing() + packs * row.piecesPerPack();
  }

  private Pack pack(int at, int number) {
    SparesRow row = rows.get(at);
    int before = held(row, number);
    int pieces = row.packsInLot() * row.piecesPerPack();
    double saved =
        row.importance()
            * (row.losses().expectedShortage(before)
                - row.losses().expectedShortage(before + pieces));
    return new Pack(
        at,
        number,
        fills(row, before),
        row.packsInLot() * units(row.packPrice().orElseThrow()),
        // What a rounded difference leaves would otherwise count as a saving.
        saved < 1e-12 ? 0 : saved);
  }

  /** An item that wants packs above its floor wants those below it for its losses too. */
  static boolean fills(SparesRow row, int held) {
    return row.carry() == row.floor()
        && held < row.floor()
        && row.losses().expectedShortage(held) < HARDLY_SHORT;
  }

  /** Packs to buy of a row that only fill its floor. */
  static int filling(SparesRow row) {
    return (int) IntStream.range(0, row.buyPacks()).filter(k -> fills(row, held(row, k))).count();
  }

  /** Money in whole units, the smallest in which budget and prices are whole (0.01 to 0.0001). */
  long units(BigDecimal money) {
    return money.setScale(decimals, RoundingMode.HALF_UP).unscaledValue().longValueExact();
  }

  BigDecimal money(long units) {
    return BigDecimal.valueOf(units, decimals);
  }
}
