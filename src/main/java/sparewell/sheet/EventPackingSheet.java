package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import sparewell.event.EventPacking;
import sparewell.event.EventPacking.Line;
import sparewell.event.EventPacking.PackingList;
import sparewell.season.Place;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** What goes into the event's box, from where, and where it goes back to. */
public final class EventPackingSheet {
  private EventPackingSheet() {}

  /** The sheet. */
  public static ReportSheet of(EventPacking packing) {
    List<Block.Line> top = new ArrayList<>();
    for (PackingList list : packing.lists()) {
      top.add(action(list));
    }
    if (packing.lists().isEmpty()) {
      top.add(Block.Line.of("No event lies ahead; add one to the Events sheet to have it packed."));
    }
    if (packing.lists().size() > 1) {
      top.add(
          Phrase.small(
              "Each event is packed from what is on hand now. After each, refill what it cost."));
    }
    List<Line> lines = packing.lists().stream().flatMap(list -> list.lines().stream()).toList();
    return new ReportSheet(
        "Event packing",
        "What to pack for the next event, from where, and where it goes back to",
        List.of(
            new Block.Text(top),
            new Block.Rows(
                new Table<>(
                    "event-packing.csv",
                    "Pack from the top down",
                    columns(packing.lists().size() > 1),
                    lines,
                    "Nothing to pack."))));
  }

  private static Block.Line action(PackingList list) {
    String pieces = Phrase.count(list.pieces(), "piece");
    String what =
        list.boxed()
            ? "pack " + pieces + " into " + list.event().box()
            : "no box is named: have " + pieces + " at hand";
    String slots =
        list.slots().isPresent()
            ? String.format(
                Locale.ROOT, ", %d of %d slots", list.slotsUsed(), list.slots().getAsInt())
            : "";
    int missing = list.shortPieces();
    String shortage =
        missing == 0
            ? ". Nothing stays short."
            : ". "
                + Phrase.count(missing, "piece")
                + (missing == 1 ? " stays" : " stay")
                + " short"
                + (list.slots().isPresent() && list.slotsWanted() > list.slots().getAsInt()
                    ? " (everything wanted would take " + list.slotsWanted() + " slots)."
                    : ".");
    return Phrase.strong(
        list.event().name() + " (" + list.event().date() + "): " + what + slots + shortage,
        missing == 0 ? Tone.GOOD : Tone.WATCH);
  }

  /** The event is named above the table, and in each row only where there are several. */
  private static List<Column<Line>> columns(boolean several) {
    return List.of(
        several
            ? Column.of("event", "Event", Format.TEXT, "Event.", Line::event)
            : Column.csvOnly("event", Format.TEXT, Line::event),
        Column.of("style", "Style", Format.TEXT, "Style.", line -> line.item().style()),
        Column.of("size", "Size", Format.TEXT, "Size.", line -> line.item().size()),
        Column.of("colour", "Colour", Format.TEXT, "Colour.", line -> line.item().colour()),
        Column.<Line>of(
                "pieces", "Pieces", Format.COUNT, "Pieces to pack from this place.", Line::pieces)
            .summed(),
        Column.sheetOnly(
            "What to do", Format.TEXT, "What to do before the event.", EventPackingSheet::before),
        Column.of(
            "from_box",
            "From box",
            Format.TEXT,
            "Box they lie in now; empty where they lie loose or there are none.",
            line -> line.from().map(Place::box).orElse("")),
        Column.of(
            "from_compartment",
            "From compartment",
            Format.TEXT,
            "Compartment of that box, or of the loose pieces.",
            line -> line.from().map(Place::compartment).orElse("")),
        Column.sheetOnly(
            "Afterwards",
            Format.TEXT,
            "What to do with what is left of it after the event.",
            EventPackingSheet::afterwards),
        Column.<Line>of(
                "run_out_chance",
                "Run-out chance",
                Format.PROBABILITY,
                "Chance that the event costs more of the item than all that is packed of it.",
                Line::runOutProbability)
            .quiet(),
        Column.<Line>of(
                "short",
                "Short",
                Format.COUNT,
                "Pieces of the item wanted but not packed: none left, or no slot.",
                Line::shortPieces)
            .toned(line -> line.shortPieces() > 0 ? Tone.WATCH : Tone.NONE)
            .quiet()
            .summed());
  }

  private static String before(Line line) {
    if (line.pieces() == 0) {
      return line.noSlot() ? "no slot left: leave it" : "none left: buy it";
    }
    return line.inBox()
        ? "leave it in the box"
        : line.ashore() ? "bring it from ashore" : "move it over";
  }

  private static String afterwards(Line line) {
    if (line.from().isEmpty()) {
      return "";
    }
    return line.inBox() ? "stays in the box" : "back to " + line.from().get().name();
  }
}
