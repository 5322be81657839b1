package sparewell.workbook.demo;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sparewell.workbook.demo.DemoStyle.Item;

/**
 * Stock of the demo's angler, its places, and what was bought along the way.
 *
 * <p>Counts are drawn around each floor, so that some items are short and some plentiful. Boxes of
 * jigs, plastics and terminal tackle were counted in January: their counts are what lies there now
 * plus the losses and less the purchases since then, so that the books balance.
 */
final class DemoStock {
  static final LocalDate COUNTED_ON = LocalDate.parse("2026-01-10");
  private static final Set<String> COUNTED =
      Set.of(DemoTackle.JIGS, DemoTackle.PLASTICS, DemoTackle.TERMINAL);

  /** A row of the stock, in pieces. */
  record Row(Item item, String place, int pieces, boolean counted, String note) {}

  /** A row of the purchases, in pieces. */
  record Purchase(LocalDate date, Item item, String place, int pieces) {}

  private static final int FLOOR_OF_SETTING = 3;

  private final Dice dice = new Dice(20260315);
  private final DemoSeason season;
  final List<Row> rows = new ArrayList<>();
  final List<Purchase> purchases = new ArrayList<>();

  DemoStock(DemoSeason season) {
    this.season = season;
    buy();
    Map<Item, Integer> aboard = new LinkedHashMap<>();
    for (DemoStyle style : DemoTackle.STYLES) {
      for (Item item : style.items()) {
        aboard.put(item, now(item));
      }
    }
    aboard.forEach(this::stow);
    packDayBox();
    fillShelf(aboard);
  }

  private void stow(Item item, int now) {
    boolean counted = COUNTED.contains(item.style().family());
    String home = DemoBoat.homeOf(item.style().name());
    int pieces = now;
    if (counted) {
      pieces = Math.max(0, now + lostSince(item) - boughtSince(item));
    }
    rows.add(new Row(item, home, pieces, counted, ""));
  }

  /** Pieces aboard at the date of the demo. */
  private int now(Item item) {
    DemoStyle style = item.style();
    switch (style.name()) {
      case "Casting rod":
        return style.items().indexOf(item) < 2 ? 2 : 1;
      case "Spinning rod":
        return 1;
      case "Landing net":
        return style.items().indexOf(item) == 0 ? 1 : 0;
      case "Hand tool":
        return item.size().us().startsWith("Split") ? 0 : 1;
      default:
        break;
    }
    int floor = style.carryAtLeast() < 0 ? FLOOR_OF_SETTING : style.carryAtLeast();
    if (style.packs()) {
      int over = dice.pick(0.08, 0.12, 0.2, 0.25, 0.2, 0.15);
      // Of terminal tackle he has more than his floor.
      int more = style.family().equals(DemoTackle.TERMINAL) ? 3 : 0;
      int halfPacks = Math.max(0, 2 * floor - 2 + over + more);
      return halfPacks * style.piecesPerPack() / 2;
    }
    int spread = dice.pick(0.06, 0.16, 0.34, 0.28, 0.16);
    return Math.max(0, floor - 2 + spread);
  }

  private void packDayBox() {
    for (String name :
        List.of("Squarebill crankbait", "Lipless crankbait", "Suspending jerkbait", "Bladed jig")) {
      List<Item> items = DemoTackle.style(name).items();
      for (int i = 0; i < 3; i++) {
        rows.add(new Row(items.get(2 * i), DemoBoat.DAY_BOX, 1, false, ""));
      }
    }
  }

  /** About one item in four has spares at home; gear that is not aboard lies there too. */
  private void fillShelf(Map<Item, Integer> aboard) {
    for (Map.Entry<Item, Integer> entry : aboard.entrySet()) {
      Item item = entry.getKey();
      DemoStyle style = item.style();
      if (style.family().equals(DemoTackle.GEAR)) {
        if (entry.getValue() == 0 && style.name().equals("Landing net")) {
          rows.add(new Row(item, DemoBoat.GARAGE, 1, false, "Left at home since the autumn"));
        }
      } else if (dice.uniform() < 0.25) {
        int pieces =
            style.packs() ? style.piecesPerPack() * dice.between(1, 2) : dice.between(1, 3);
        rows.add(new Row(item, DemoBoat.shelfOf(style.family()), pieces, false, ""));
      }
    }
  }

  /** After every fourth trip, two of the items lost since the last purchase. */
  private void buy() {
    List<DemoSeason.Outing> outings = season.outings();
    for (int i = 3; i < outings.size(); i += 4) {
      LocalDate until = outings.get(i).date();
      LocalDate from = outings.get(i - 3).date();
      List<Item> lost =
          new ArrayList<>(
              season.losses().stream()
                  .filter(loss -> !loss.outing().date().isBefore(from))
                  .filter(loss -> !loss.outing().date().isAfter(until))
                  .map(DemoSeason.LossRow::item)
                  .distinct()
                  .toList());
      for (int n = 0; n < 2 && !lost.isEmpty(); n++) {
        Item item = lost.remove(dice.between(0, lost.size() - 1));
        DemoStyle style = item.style();
        int pieces = style.packs() ? style.piecesPerPack() : dice.between(2, 4);
        LocalDate date = until.plusDays(4);
        if (!date.isAfter(DemoSeason.AS_OF)) {
          purchases.add(new Purchase(date, item, DemoBoat.homeOf(style.name()), pieces));
        }
      }
    }
  }

  private int lostSince(Item item) {
    return season.losses().stream()
        .filter(loss -> loss.item().equals(item))
        .filter(loss -> loss.outing().date().isAfter(COUNTED_ON))
        .mapToInt(DemoSeason.LossRow::lost)
        .sum();
  }

  private int boughtSince(Item item) {
    return purchases.stream()
        .filter(purchase -> purchase.item().equals(item))
        .filter(purchase -> purchase.date().isAfter(COUNTED_ON))
        .mapToInt(Purchase::pieces)
        .sum();
  }
}
