package sparewell.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sparewell.event.EventPacking;
import sparewell.event.EventPacking.Action;
import sparewell.event.EventPacking.Line;
import sparewell.event.EventPacking.PackingList;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.stock.PieceMove;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** The packing list: pieces to take out of the event's box and to put into it. */
public final class EventPackingSheet {
  public static final String NAME = "Event packing";
  private static final Columns<Line> COLUMNS = Columns.of("Event packing");
  private static final Columns<Line> FILE = Columns.of("Event packing: file");

  private EventPackingSheet() {}

  public static ReportSheet of(EventPacking packing) {
    Lines top = new Lines();
    packing.lists().forEach(list -> top.add(action(list)));
    if (packing.lists().isEmpty()) {
      top.plain("No event lies ahead; add one to the Events sheet to have it packed.");
    } else {
      top.note("Event packing");
    }
    List<Line> handled =
        packing.lines().stream().filter(line -> line.action() != Action.STAYS_ABOARD).toList();
    List<Block> blocks = new ArrayList<>();
    blocks.add(top.block());
    blocks.add(new Block.Rows(table(packing, handled, false)));
    Lines staying = new Lines();
    packing.lists().forEach(list -> staying(list, staying));
    if (!staying.list().isEmpty()) {
      blocks.add(staying.block());
    }
    blocks.add(new Block.FileOnly(table(packing, packing.lines(), true)));
    return new ReportSheet(
        NAME, "What to take out of the event's box, what to put in, and from where", blocks);
  }

  /** Pieces that nobody has to move, a line for each place. */
  private static void staying(PackingList list, Lines lines) {
    Map<Place, Map<String, List<String>>> places = new LinkedHashMap<>();
    for (Line line : list.lines()) {
      if (line.action() == Action.STAYS_ABOARD) {
        ItemId item = line.item();
        places
            .computeIfAbsent(line.from().orElse(PieceMove.OF_CHOICE), at -> new LinkedHashMap<>())
            .computeIfAbsent(item.style(), style -> new ArrayList<>())
            .add(
                Stream.of(item.size(), item.colour(), "(" + line.pieces() + ")")
                    .filter(part -> !part.isEmpty())
                    .map(part -> " " + part)
                    .collect(Collectors.joining()));
      }
    }
    if (!places.isEmpty()) {
      lines.heading(
          list.boxed()
              ? "%s: %s more stay in their boxes, as no slot is left"
              : "%s: %s to have at hand, where they lie",
          list.event().name(),
          Phrase.count(list.pieces(Action.STAYS_ABOARD), "piece"));
      places.forEach((place, styles) -> lines.plain(words(place, styles)));
    }
  }

  private static String words(Place place, Map<String, List<String>> styles) {
    return place.name()
        + (place.loose() ? "" : ", in " + place.compartment())
        + ": "
        + styles.entrySet().stream()
            .map(style -> (style.getKey() + String.join(",", style.getValue())))
            .collect(Collectors.joining("; "))
        + ".";
  }

  private static Block.Line action(PackingList list) {
    String head = list.event().name() + " (" + list.event().date() + "): ";
    if (list.packedFirst().isPresent()) {
      String first = list.packedFirst().get().name();
      return Phrase.strong(
          head + list.event().box() + " is packed for " + first + " first; run again after it.",
          Tone.NONE);
    }
    int missing = list.shortPieces();
    int elsewhere = list.boxed() ? list.pieces(Action.STAYS_ABOARD) : 0;
    return Phrase.strong(
        Phrase.text(
            "%s%s%s. %s%s.",
            head,
            what(list),
            list.slots().isPresent()
                ? Phrase.text(", %d of %d slots", list.slotsUsed(), list.slots().getAsInt())
                : "",
            missing == 0
                ? "Nothing is short"
                : Phrase.count(missing, "piece") + " short: nowhere to be had",
            elsewhere > 0
                ? Phrase.text(
                    "; %s more for which no slot is left: aboard in other boxes",
                    Phrase.count(elsewhere, "piece"))
                : ""),
        missing == 0 ? Tone.GOOD : Tone.WATCH);
  }

  private static String what(PackingList list) {
    int out = list.pieces(Action.TAKE_OUT);
    int in = list.pieces(Action.PUT_IN);
    if (!list.boxed()) {
      return "no box is packed: have "
          + Phrase.count(in + list.pieces(Action.STAYS_ABOARD), "piece")
          + " at hand";
    }
    String box = list.event().box();
    if (out + in == 0) {
      return box + " is packed";
    }
    List<String> parts = new ArrayList<>();
    if (out > 0) {
      parts.add("take " + Phrase.count(out, "piece") + " out of " + box);
    }
    if (in > 0) {
      parts.add("put " + Phrase.count(in, "piece") + " in" + (out > 0 ? "" : "to " + box));
    }
    return String.join(", ", parts);
  }

  private static Table<Line> table(EventPacking packing, List<Line> lines, boolean file) {
    return (file ? FILE : COLUMNS)
        .table(
            lines,
            columns(
                lines.stream().map(Line::event).distinct().count() > 1,
                packing.lists().stream()
                    .filter(PackingList::boxed)
                    .map(list -> list.event().name())
                    .collect(Collectors.toSet()),
                packing.lines().stream().anyMatch(line -> line.runOutProbability() > 0)));
  }

  /** The event is named above the table, and in each row only where there are several. */
  private static List<Column<Line>> columns(boolean several, Set<String> boxed, boolean chances) {
    return Columns.among(
        List.of(
            COLUMNS.column("event", Line::event, several),
            COLUMNS
                .column("What to do", EventPackingSheet::words)
                .toned(line -> line.action() == Action.BUY ? Tone.WATCH : Tone.NONE)),
        Line::item,
        COLUMNS.column("pieces", Line::pieces),
        COLUMNS.column("from_box", line -> line.from().map(Place::box).orElse("")),
        COLUMNS.column("from_compartment", line -> line.from().map(Place::compartment).orElse("")),
        COLUMNS
            .column(EntryTable.INTO, line -> line.to().map(Phrase::place).orElse(""))
            .entered(
                line ->
                    line.to().filter(PieceMove.OF_CHOICE::equals).map(place -> EntryTable.named())),
        COLUMNS.column("run_out_chance", Line::runOutProbability, chances),
        Format.COUNT.inFile("short", Line::shortPieces),
        Format.TEXT.inFile("action", line -> line.action().word()),
        Format.COUNT.inFile("slots", Line::slots),
        COLUMNS.column("Slots", line -> boxed.contains(line.event()) ? line.slots() : 0),
        EntryTable.done(line -> line.move().isPresent()));
  }

  private static String words(Line line) {
    return switch (line.action()) {
      case TAKE_OUT -> "take out";
      case LEAVE -> "leave in the box";
      case PUT_IN -> "put in";
      case STAYS_ABOARD -> "stays where it is";
      case BUY -> "short: buy";
    };
  }
}
