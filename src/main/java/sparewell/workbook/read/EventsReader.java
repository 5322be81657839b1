package sparewell.workbook.read;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.workbook.InputSheets;
import sparewell.workbook.value.Amounts;
import sparewell.workbook.value.Names;
import sparewell.workbook.value.NearMiss;

/** Reads the events with their plans. */
record EventsReader(
    Book book,
    StylesReader styles,
    PlacesReader places,
    ItemsReader items,
    Lookalikes covers,
    Keys keys) {
  List<Event> events() {
    List<Event> events = book.list(InputSheets.EVENTS, this::event);
    Map<String, List<Event.PlanLine>> plans = new HashMap<>();
    book.each(InputSheets.EVENT_PLAN, row -> planLine(row, plans));
    return events.stream()
        .map(event -> event.withPlan(plans.getOrDefault(event.name(), List.of())))
        .toList();
  }

  private Optional<Event> event(Row row) {
    Optional<String> name = book.name(row, "Event");
    Optional<LocalDate> date = row.date("Date");
    String water = row.text("Water").orElse("");
    Optional<Double> hours = row.some("Hours", Amounts::hours);
    double days = row.read("Days", Amounts::days).orElse(1.0);
    Optional<String> cover = book.name(row, "Cover");
    String box = row.key("Box", places.boxKeys).orElse("");
    Optional<Integer> slots = row.read("Slots", Amounts::pieces);
    Optional<Double> chance = row.read("Chance wanted", Amounts::chance);
    if (!PlacesReader.defined(row, "Event", name, keys)) {
      return Optional.empty();
    }
    cover.ifPresent(c -> covers.meet(row, "Cover", c));
    return Optional.of(
        new Event(
            name.orElseThrow(),
            date.orElseThrow(),
            water,
            hours.orElseThrow(),
            days,
            cover,
            box,
            slots.map(OptionalInt::of).orElse(OptionalInt.empty()),
            chance.map(OptionalDouble::of).orElse(OptionalDouble.empty()),
            List.of(),
            row.origin()));
  }

  private void planLine(Row row, Map<String, List<Event.PlanLine>> plans) {
    Optional<String> event = row.key("Event", keys);
    Optional<String> style = row.key("Style", styles.keys);
    Optional<Double> hours = row.some("Hours", Amounts::hours);
    Optional<String> colours = row.text("Colours");
    if (!row.failed()) {
      List<String> planned =
          colours.map(text -> colours(row, style.orElseThrow(), text)).orElse(List.of());
      plans
          .computeIfAbsent(event.orElseThrow(), e -> new ArrayList<>())
          .add(new Event.PlanLine(style.orElseThrow(), hours.orElseThrow(), planned, row.origin()));
    }
  }

  /** Colours of a list, known ones in their first spelling; adds findings on likely slips. */
  private List<String> colours(Row row, String style, String list) {
    Map<String, String> known = new LinkedHashMap<>();
    for (ItemId item : items.of(style)) {
      if (!item.colour().isEmpty()) {
        known.putIfAbsent(Names.fold(item.colour()), item.colour());
      }
    }
    List<String> colours = new ArrayList<>();
    List<String> unknown = new ArrayList<>();
    for (String part : list.split("[,;]")) {
      String colour = Names.clean(part);
      String spelled = known.get(Names.fold(colour));
      if (spelled == null && !colour.isEmpty()) {
        unknown.add(colour);
      }
      if (!colour.isEmpty()) {
        colours.add(spelled == null ? book.shown("Colour", colour) : spelled);
      }
    }
    String whole = known.get(Names.fold(list));
    if (!unknown.isEmpty() && whole != null) {
      return List.of(whole); // one colour whose name holds a comma
    }
    String done =
        colours.size() > unknown.size()
            ? "planned with the other colours named"
            : "planned as if all its colours were used";
    for (String colour : unknown) {
      NearMiss.of(Names.fold(colour), known.keySet())
          .ifPresent(near -> row.sayDidYouMean("Colours", colour, done, known.get(near)));
    }
    return colours.stream().distinct().toList();
  }
}
