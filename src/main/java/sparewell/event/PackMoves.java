package sparewell.event;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.event.EventPacker.Content;
import sparewell.event.EventPacker.Wanted;
import sparewell.event.EventPacking.Action;
import sparewell.event.EventPacking.Line;
import sparewell.event.FreePockets.Stay;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.season.Season;
import sparewell.spares.EventNeed;
import sparewell.stock.Homes;
import sparewell.stock.OnHand;
import sparewell.stock.OnHand.ItemStock;
import sparewell.stock.PieceMove;

/**
 * Moves of pieces from the present contents of boxes to those wanted: taken out, left, put in. All
 * that is taken out comes first, so that it can go into another box.
 */
final class PackMoves {
  private final Season season;
  private final OnHand before;
  private final Map<ItemId, ItemStock> stock;
  private final List<Content> contents;
  private final Map<ItemId, Map<Place, Integer>> pieces;
  private final List<Line> lines = new ArrayList<>();
  private final Homes homes;

  PackMoves(Season season, OnHand before, List<Content> contents) {
    this.season = season;
    this.before = before;
    this.stock = before.itemsById();
    this.contents = contents;
    this.homes = new Homes(season, before, EventPacker.emptied(contents));
    this.pieces = before.piecesByPlace();
  }

  List<Line> lines() {
    contents.stream().filter(Content::emptied).forEach(this::takeOut);
    for (Content content : contents) {
      List<Line> own = new ArrayList<>();
      for (Wanted wanted : content.items().values()) {
        own.addAll(content.boxed() ? pack(content, wanted) : atHand(content, wanted));
      }
      content.stays().keySet().stream()
          .filter(item -> !content.items().containsKey(item))
          .forEach(item -> own.add(stays(content, item)));
      lines.addAll(placeByPlace(own));
    }
    return lines;
  }

  /** Everything that is more than the box is to hold. */
  private void takeOut(Content content) {
    for (Map.Entry<ItemId, Map<Place, Integer>> entry : pieces.entrySet()) {
      ItemId item = entry.getKey();
      int keep = content.pieces(item);
      for (Map.Entry<Place, Integer> there : new LinkedHashMap<>(entry.getValue()).entrySet()) {
        if (content.isBox(there.getKey()) && there.getValue() > keep) {
          int out = there.getValue() - keep;
          Place home = homes.of(item).orElse(PieceMove.OF_CHOICE);
          lines.add(line(content, item, Action.TAKE_OUT, out, there.getKey(), home, 0));
          shift(item, out, there.getKey(), home);
        }
      }
    }
  }

  private List<Line> pack(Content content, Wanted wanted) {
    ItemId item = wanted.need().item();
    Map<Place, Integer> own = pieces.get(item);
    List<Line> made = new ArrayList<>();
    Place box = box(content, own);
    int inside = Math.min(wanted.pieces(), own.getOrDefault(box, 0));
    if (inside > 0) {
      Stay stay = content.stay(item);
      int slots = slots(wanted, 0, inside) + stay.slots();
      made.add(line(content, item, Action.LEAVE, inside + stay.pieces(), box, null, slots));
    } else if (content.stay(item).pieces() > 0) {
      made.add(stays(content, item));
    }
    for (Place source : sources(item, content)) {
      int from = Math.min(wanted.pieces() - inside, usable(item, source));
      if (from > 0) {
        int slots = slots(wanted, inside, from);
        made.add(line(content, item, Action.PUT_IN, from, source, box, slots));
        shift(item, from, source, box);
        inside += from;
      }
    }
    made.addAll(elsewhere(content, wanted.need(), inside + content.stay(item).pieces(), 0));
    return made;
  }

  /** Pieces that are not wanted, but in nothing's way. */
  private Line stays(Content content, ItemId item) {
    Stay stay = content.stay(item);
    Place box = box(content, pieces.get(item));
    return line(content, item, Action.LEAVE, stay.pieces(), box, null, stay.slots());
  }

  /** Lines without a box: what is aboard stays where it is, what is ashore goes aboard. */
  private List<Line> atHand(Content content, Wanted wanted) {
    ItemId item = wanted.need().item();
    List<Line> made = new ArrayList<>();
    int listed = 0;
    for (Place source : sources(item, content)) {
      boolean ashore = season.ashore(source);
      // aboard, a piece that lies in the box of another event is at hand for this one as well
      boolean bounded = ashore || content.event().slots().isPresent();
      int most = bounded ? wanted.pieces() : wanted.need().wanted();
      int from = Math.min(most - listed, pieces.get(item).get(source));
      if (from > 0) {
        int slots = slots(wanted, listed, from);
        if (ashore) {
          Place home = homes.of(item).orElse(PieceMove.OF_CHOICE);
          made.add(line(content, item, Action.PUT_IN, from, source, home, slots));
          shift(item, from, source, home);
        } else {
          made.add(line(content, item, Action.STAYS_ABOARD, from, source, null, slots));
        }
        listed += from;
      }
    }
    made.addAll(elsewhere(content, wanted.need(), listed, listed));
    return made;
  }

  /** Pockets that pieces of an item fill beyond those that the pieces before them share. */
  private static int slots(Wanted wanted, int before, int more) {
    return SlotFill.slots(before + more, wanted.perSlot())
        - SlotFill.slots(before, wanted.perSlot());
  }

  private void shift(ItemId item, int count, Place from, Place to) {
    pieces.get(item).merge(from, -count, Integer::sum);
    pieces.get(item).merge(to, count, Integer::sum);
  }

  /**
   * Wanted pieces that the list above does not hold: aboard elsewhere, else nowhere to be had.
   *
   * @param listed pieces of the item that the lines above hold
   * @param told of them, those that lie among the places looked through here
   */
  private List<Line> elsewhere(Content content, EventNeed.Item need, int listed, int told) {
    List<Line> made = new ArrayList<>();
    int left = need.wanted() - listed;
    int skip = told;
    for (Place source : sources(need.item(), content)) {
      int here = season.ashore(source) ? 0 : pieces.get(need.item()).get(source);
      int skipped = Math.min(skip, here);
      skip -= skipped;
      int from = Math.min(left, here - skipped);
      if (from > 0) {
        left -= from;
        made.add(line(content, need.item(), Action.STAYS_ABOARD, from, source, null, 0));
      }
    }
    ItemStock there = stock.get(need.item());
    int missing = Math.min(left, need.wanted() - there.aboard() - there.ashore());
    if (missing > 0) {
      made.add(line(content, need.item(), Action.BUY, missing, null, null, 0));
    }
    return made;
  }

  /** Places of an item but the event's box: aboard before ashore, the fullest first. */
  private List<Place> sources(ItemId item, Content content) {
    Map<Place, Integer> own = pieces.get(item);
    return own.keySet().stream()
        .filter(place -> !content.isBox(place))
        .sorted(
            Comparator.comparing(season::ashore)
                .thenComparing(place -> -own.get(place))
                .thenComparing(Place.BY_NAME))
        .toList();
  }

  private int usable(ItemId item, Place place) {
    int kept =
        contents.stream()
            .filter(content -> content.isBox(place))
            .mapToInt(content -> content.pieces(item))
            .sum();
    return Math.max(0, pieces.get(item).get(place) - kept);
  }

  private Place box(Content content, Map<Place, Integer> own) {
    String name = content.event().box();
    return own.keySet().stream()
        .filter(content::isBox)
        .findFirst()
        .orElseGet(
            () ->
                Optional.ofNullable(season.boxesByName().get(name))
                    .map(known -> new Place(name, known.compartment()))
                    .orElseGet(() -> new Place(name, "")));
  }

  private Line line(
      Content content, ItemId item, Action action, int count, Place from, Place to, int slots) {
    Wanted wanted = content.items().get(item);
    return new Line(
        content.event().name(),
        item,
        action,
        count,
        Optional.ofNullable(from),
        Optional.ofNullable(to),
        slots,
        wanted == null ? 0 : wanted.need().losses().above(stock.get(item).aboard()));
  }

  /**
   * Sorts lines: in the box already, then place by place aboard and ashore so that each is opened
   * once, then what stays elsewhere, last what is nowhere to be had.
   */
  private static List<Line> placeByPlace(List<Line> lines) {
    List<Optional<Place>> places = lines.stream().map(Line::from).distinct().toList();
    return lines.stream()
        .sorted(
            Comparator.comparing(Line::action)
                .thenComparingInt(line -> places.indexOf(line.from())))
        .toList();
  }
}
