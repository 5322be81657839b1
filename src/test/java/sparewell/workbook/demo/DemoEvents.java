package sparewell.workbook.demo;

import java.time.LocalDate;
import java.util.List;

/** The invented angler's events to come, and what is to be thrown at them, as rows of cells. */
final class DemoEvents {
  private static final String BLANK = "";

  static final List<List<Object>> EVENTS =
      List.of(
          event("Stone Open", "2026-03-27", "Marrowby Reservoir", 27, 3, "rock", true, 0.97),
          event("Monday Pairs", "2026-03-30", "Osk River", 18, 2, "wood", false, BLANK),
          event("Grass Open", "2026-04-11", "Lake Quillet", 16, 2, "grass", true, BLANK),
          event("Club evening", "2026-04-17", "Pellam Pool", 5, 1, "wood", false, BLANK),
          event("Marrowby Two-day", "2026-05-09", "Marrowby Reservoir", 18, 2, "rock", true, BLANK),
          event("Summer Open", "2026-06-20", "Tannet Lake", 16, 2, "open", false, BLANK));

  static final List<List<Object>> PLAN =
      List.of(
          plan("Stone Open", "Football jig", 14, "Green pumpkin, Brown orange"),
          plan("Stone Open", "Craw trailer", 14, "Green pumpkin, Brown orange"),
          plan("Stone Open", "Finesse worm", 12, "Green pumpkin, Watermelon"),
          plan("Stone Open", "Drop shot weight", 12, ""),
          plan("Stone Open", "Squarebill crankbait", 9, "Red craw, Brown craw"),
          plan("Stone Open", "Ball head jig", 5, ""),
          plan("Stone Open", "Lipless crankbait", 4, "Red craw, Silver shad"),
          plan("Stone Open", "Suspending jerkbait", 3, ""),
          plan("Grass Open", "Bladed jig", 6, "White, Green pumpkin"),
          plan("Grass Open", "Stick worm", 6, "Green pumpkin, Watermelon"),
          plan("Grass Open", "Offset worm hook", 6, ""),
          plan("Grass Open", "Lipless crankbait", 5, "Red craw, Silver shad, Bluegill"),
          plan("Grass Open", "Swim jig", 4, "Bluegill"),
          plan("Grass Open", "Craw trailer", 8, "Green pumpkin, Black blue"),
          plan("Club evening", "Squarebill crankbait", 2, "Brown craw, Bone"),
          plan("Club evening", "Spinnerbait", 1.5, ""),
          plan("Club evening", "Creature bait", 1.5, "Green pumpkin"),
          plan("Club evening", "Bullet weight", 1.5, ""),
          plan("Marrowby Two-day", "Football jig", 6, "Green pumpkin, Brown orange"),
          plan("Marrowby Two-day", "Craw trailer", 6, ""),
          plan("Marrowby Two-day", "Deep crankbait", 5, ""),
          plan("Marrowby Two-day", "Finesse worm", 5, ""),
          plan("Marrowby Two-day", "Drop shot weight", 4, ""),
          plan("Marrowby Two-day", "Ball head jig", 2, ""),
          plan("Marrowby Two-day", "Walking topwater", 2, "Bone"));

  /** An event; one packed for has the day box with its 24 pockets. */
  private static List<Object> event(
      String name,
      String date,
      String water,
      double hours,
      int days,
      String cover,
      boolean packed,
      Object chance) {
    return List.of(
        name,
        LocalDate.parse(date),
        water,
        hours,
        days,
        cover,
        packed ? DemoBoat.DAY_BOX : BLANK,
        packed ? 24 : BLANK,
        chance);
  }

  private DemoEvents() {}

  private static List<Object> plan(String event, String style, double hours, String colours) {
    return List.of(event, style, hours, colours);
  }
}
