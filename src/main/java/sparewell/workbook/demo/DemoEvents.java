package sparewell.workbook.demo;

import java.time.LocalDate;
import java.util.List;

/** The invented angler's events to come, and what is to be thrown at them, as rows of cells. */
final class DemoEvents {
  private static final String BLANK = "";

  static final List<List<Object>> EVENTS =
      List.of(
          List.of(
              "Spring Open",
              LocalDate.parse("2026-03-28"),
              "Lake Quillet",
              16.0,
              2,
              "grass",
              DemoBoat.DAY_BOX,
              24,
              0.97),
          List.of(
              "Club evening",
              LocalDate.parse("2026-04-17"),
              "Pellam Pool",
              5.0,
              1,
              "wood",
              BLANK,
              BLANK,
              BLANK),
          List.of(
              "Marrowby Two-day",
              LocalDate.parse("2026-05-09"),
              "Marrowby Reservoir",
              18.0,
              2,
              "rock",
              DemoBoat.DAY_BOX,
              24,
              BLANK));

  static final List<List<Object>> PLAN =
      List.of(
          plan("Spring Open", "Lipless crankbait", 4, "Red craw, Silver shad, Bluegill"),
          plan("Spring Open", "Bladed jig", 4, "White, Green pumpkin"),
          plan("Spring Open", "Suspending jerkbait", 3, ""),
          plan("Spring Open", "Swim jig", 2, "Bluegill"),
          plan("Spring Open", "Stick worm", 3, "Green pumpkin, Watermelon"),
          plan("Spring Open", "Offset worm hook", 3, ""),
          plan("Spring Open", "Flipping jig", 3, "Black blue"),
          plan("Spring Open", "Craw trailer", 5, "Green pumpkin, Black blue"),
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

  private DemoEvents() {}

  private static List<Object> plan(String event, String style, double hours, String colours) {
    return List.of(event, style, hours, colours);
  }
}
