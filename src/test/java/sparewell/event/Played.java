package sparewell.event;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import sparewell.event.EventPacking.Action;
import sparewell.event.EventPacking.Line;
import sparewell.event.EventPacking.PackingList;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.spares.Bring;
import sparewell.spares.BuyList;
import sparewell.spares.SparesReport;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;
import sparewell.stock.OnHand.ItemStock;
import sparewell.stock.PieceMove;

/** An angler who does what the lists say, piece by piece, and minds whether it can be done. */
public final class Played {
  /** The box he chooses for pieces that may go into any. */
  private static final Place CHOSEN = new Place("Chosen tray", "Bow");

  private final OnHand before;
  private final Map<ItemId, Map<Place, Integer>> pieces = new LinkedHashMap<>();

  private Played(OnHand before) {
    this.before = before;
    for (Holding holding : before.holdings()) {
      pieces
          .computeIfAbsent(holding.item(), item -> new LinkedHashMap<>())
          .merge(holding.place(), holding.pieces(), Integer::sum);
    }
  }

  /** Plays bringing, buying and packing one after the other, and looks at the boxes. */
  public static OnHand all(
      OnHand before, SparesReport spares, BuyList buys, EventPacking packing, Set<String> ashore) {
    Played played = new Played(before);
    List<List<Object>> asked = new ArrayList<>();
    for (Bring bring : spares.brings()) {
      asked.add(List.of("bring", bring.item(), bring.from()));
      played.move(
          bring.item(), bring.pieces(), Optional.of(bring.from()), bring.to().orElse(CHOSEN));
    }
    for (BuyList.Line line : buys.lines()) {
      if (line.bought()) {
        played.move(line.item(), line.pieces(), Optional.empty(), line.into().orElse(CHOSEN));
      }
    }
    for (Line line : packing.lines()) {
      line.move()
          .ifPresent(
              move -> asked.add(List.of(line.event(), line.action(), line.item(), line.from())));
      played.pack(line);
    }
    assertEquals(asked.size(), Set.copyOf(asked).size(), "asked for twice: " + asked);
    packing.lists().forEach(played::look);
    return played.onHand(ashore);
  }

  private void pack(Line line) {
    if (line.action() == Action.TAKE_OUT || line.action() == Action.PUT_IN) {
      move(
          line.item(),
          line.pieces(),
          Optional.of(known(line.from().orElseThrow())),
          known(line.to().orElseThrow()));
    } else {
      assertTrue(line.to().isEmpty(), line.toString());
      line.from()
          .ifPresent(
              from ->
                  assertTrue(
                      pieces.get(line.item()).getOrDefault(known(from), 0) >= line.pieces(),
                      line + " is not there"));
    }
  }

  private static Place known(Place place) {
    return place.equals(PieceMove.OF_CHOICE) ? CHOSEN : place;
  }

  private void move(ItemId item, int count, Optional<Place> from, Place to) {
    assertTrue(count > 0, item + " from " + from);
    Map<Place, Integer> own = pieces.computeIfAbsent(item, key -> new LinkedHashMap<>());
    from.ifPresent(
        place -> {
          int there = own.getOrDefault(place, 0);
          assertTrue(there >= count, count + " " + item + " from " + place + ": " + own);
          own.put(place, there - count);
        });
    own.merge(to, count, Integer::sum);
  }

  /** The box holds just what its list says, within its pockets, and nothing went to and fro. */
  private void look(PackingList list) {
    if (!list.boxed() || list.packedFirst().isPresent()) {
      return;
    }
    Map<ItemId, Integer> wanted = new TreeMap<>();
    Map<ItemId, Integer> out = new TreeMap<>();
    Set<ItemId> in = new java.util.HashSet<>();
    int slots = 0;
    for (Line line : list.lines()) {
      if (line.action() == Action.LEAVE || line.action() == Action.PUT_IN) {
        wanted.merge(line.item(), line.pieces(), Integer::sum);
        slots += line.slots();
      }
      if (line.action() == Action.PUT_IN) {
        in.add(line.item());
        assertEquals(list.event().box(), line.to().orElseThrow().box());
      }
      if (line.action() == Action.TAKE_OUT) {
        out.merge(line.item(), line.pieces(), Integer::sum);
        assertTrue(!line.to().orElseThrow().box().equals(list.event().box()), line.toString());
      }
    }
    assertTrue(out.keySet().stream().noneMatch(in::contains), "out and in again: " + out);
    assertEquals(list.slotsUsed(), slots);
    if (list.slots().isPresent()) {
      assertTrue(slots <= list.slots().getAsInt(), slots + " slots of " + list.slots());
      assertEquals(wanted, content(list.event().box()), "what the box holds in the end");
    }
  }

  private Map<ItemId, Integer> content(String box) {
    Map<ItemId, Integer> content = new TreeMap<>();
    pieces.forEach(
        (item, places) ->
            places.forEach(
                (place, count) -> {
                  if (place.box().equals(box) && count > 0) {
                    content.merge(item, count, Integer::sum);
                  }
                }));
    return content;
  }

  private OnHand onHand(Set<String> ashore) {
    List<Holding> holdings = new ArrayList<>();
    List<ItemStock> items = new ArrayList<>();
    for (ItemStock item : before.items()) {
      int[] sum = new int[2];
      pieces
          .getOrDefault(item.item(), Map.of())
          .forEach(
              (place, count) -> {
                boolean home = ashore.contains(place.compartment());
                sum[home ? 1 : 0] += count;
                holdings.add(new Holding(item.item(), place, home, count, item.weightEach()));
              });
      items.add(
          new ItemStock(
              item.item(),
              sum[0],
              sum[1],
              item.carryAtLeast(),
              item.packPrice(),
              item.weightEach()));
    }
    return new OnHand(holdings, items, List.of());
  }
}
