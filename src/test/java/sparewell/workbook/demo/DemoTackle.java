package sparewell.workbook.demo;

import java.util.ArrayList;
import java.util.List;
import sparewell.workbook.demo.DemoStyle.Item;
import sparewell.workbook.demo.DemoStyle.Size;

/**
 * The demo's tackle: 30 styles in 7 families, 220 items. Weights and prices are of a plausible
 * size, no product's; true loss rates are made up.
 */
final class DemoTackle {
  static final String CRANKBAITS = "Crankbaits";
  static final String TOPWATER = "Topwater and jerkbaits";
  static final String WIRE = "Wire baits";
  static final String JIGS = "Jigs";
  static final String PLASTICS = "Soft plastics";
  static final String TERMINAL = "Terminal tackle";
  static final String GEAR = "Rods and tools";

  private static final List<Size> NO_SIZE = List.of(size("", "", 0.5));
  private static final String CRANK_COLOURS =
      "Silver shad,Red craw,Brown craw,Bluegill,Chartreuse,Bone";

  private static final int SETTING = -1;

  /** All styles, family by family. */
  static final List<DemoStyle> STYLES =
      List.of(
          // name, family, losses per 10 h, popularity, months, pack, price, floor, importance
          lure("Squarebill crankbait", CRANKBAITS, 2.2, 9, 3, 11, 1, 7.49, SETTING, 1.5)
              .sized(CRANK_COLOURS, size("S", "S", 0.375), size("M", "M", 0.5)),
          lure("Lipless crankbait", CRANKBAITS, 1.8, 7, 10, 5, 1, 6.99, SETTING, 1.2)
              .sized(CRANK_COLOURS, size("1/2 oz", "14 g", 0.5), size("1/4 oz", "7 g", 0.25)),
          lure("Deep crankbait", CRANKBAITS, 1.2, 5, 5, 10, 1, 8.99, 2, 1)
              .sized(
                  "Silver shad,Brown craw,Bluegill,Chartreuse,Pearl",
                  size("M", "M", 0.625),
                  size("L", "L", 0.875)),
          lure("Medium crankbait", CRANKBAITS, 1.4, 5, 3, 11, 1, 7.49, 2, 1)
              .sized(CRANK_COLOURS, size("", "", 0.4375)),
          lure("Suspending jerkbait", TOPWATER, 0.7, 7, 10, 4, 1, 9.99, 2, 1.3)
              .sized(
                  "Silver shad,Ghost,Gold,Perch,Pearl",
                  size("4 in", "10 cm", 0.40625),
                  size("5 in", "13 cm", 0.5625)),
          lure("Walking topwater", TOPWATER, 0.4, 5, 5, 10, 1, 8.99, 2, 1)
              .sized(
                  "Bone,Silver shad,Ghost,Chartreuse",
                  size("4 in", "10 cm", 0.5),
                  size("5 in", "13 cm", 0.8125)),
          lure("Popper", TOPWATER, 0.4, 3, 5, 10, 1, 7.99, 2, 0.8)
              .sized("Bone,Silver shad,Bluegill,Black,Natural frog", size("", "", 0.3125)),
          lure("Hollow frog", TOPWATER, 0.8, 4, 5, 10, 1, 8.49, 2, 1)
              .sized("Natural frog,Black,White,Bluegill,Brown,Yellow", size("", "", 0.625)),
          lure("Spinnerbait", WIRE, 1.1, 6, 1, 12, 1, 6.49, 2, 1)
              .sized(
                  "White,Chartreuse,Silver shad,Bluegill,Black",
                  size("3/8 oz", "11 g", 0.5),
                  size("1/2 oz", "14 g", 0.625)),
          lure("Buzzbait", WIRE, 0.5, 4, 6, 10, 1, 5.99, 1, 0.5)
              .sized("White,Black", size("3/8 oz", "11 g", 0.5), size("1/2 oz", "14 g", 0.625)),
          lure("Bladed jig", WIRE, 1.6, 7, 2, 11, 1, 7.99, 2, 1.2)
              .sized(
                  "White,Green pumpkin,Black blue,Bluegill,Red craw",
                  size("3/8 oz", "11 g", 0.5),
                  size("1/2 oz", "14 g", 0.625)),
          lure("Football jig", JIGS, 4.5, 8, 1, 12, 1, 3.99, SETTING, 1.5)
              .sized(
                  "Green pumpkin,Brown orange,Black blue,Brown",
                  size("1/2 oz", "14 g", 0.5625),
                  size("3/8 oz", "11 g", 0.4375),
                  size("3/4 oz", "21 g", 0.8125)),
          lure("Flipping jig", JIGS, 3.2, 7, 2, 11, 1, 3.99, SETTING, 1.3)
              .sized(
                  "Black blue,Green pumpkin,Brown orange,White",
                  size("1/2 oz", "14 g", 0.5625),
                  size("3/4 oz", "21 g", 0.8125)),
          lure("Finesse jig", JIGS, 3.6, 5, 10, 5, 1, 3.49, SETTING, 1)
              .sized(
                  "Green pumpkin,Brown orange,Black blue,Brown",
                  size("1/4 oz", "7 g", 0.3125),
                  size("3/8 oz", "11 g", 0.4375)),
          lure("Swim jig", JIGS, 1.6, 5, 4, 11, 1, 4.49, 2, 1)
              .sized(
                  "White,Bluegill,Black blue",
                  size("3/8 oz", "11 g", 0.4375),
                  size("1/2 oz", "14 g", 0.5625)),
          lure("Stick worm", PLASTICS, 13, 9, 3, 11, 10, 7.99, 1, 1.5)
              .sized(
                  "Green pumpkin,Watermelon,Black blue,White,Plum,Brown",
                  size("5 in", "13 cm", 0.3125),
                  size("4 in", "10 cm", 0.1875)),
          lure("Ribbon tail worm", PLASTICS, 9, 6, 5, 10, 10, 5.49, 1, 1)
              .sized(
                  "Plum,Green pumpkin,Red shade,Black,Watermelon",
                  size("7 in", "18 cm", 0.25),
                  size("10 in", "25 cm", 0.4375)),
          lure("Finesse worm", PLASTICS, 10, 7, 1, 12, 10, 4.99, 1, 1.2)
              .sized(
                  "Green pumpkin,Watermelon,Plum,Pearl,Smoke,Brown", size("6 in", "15 cm", 0.125)),
          lure("Creature bait", PLASTICS, 9, 7, 3, 11, 8, 5.99, 1, 1.2)
              .sized(
                  "Green pumpkin,Black blue,Watermelon,Brown orange,Plum,White,Red shade",
                  size("4 in", "10 cm", 0.40625)),
          lure("Craw trailer", PLASTICS, 7, 0, 1, 12, 8, 4.99, 1, 1)
              .sized(
                  "Green pumpkin,Black blue,Brown orange,White",
                  size("3 in", "8 cm", 0.1875),
                  size("4 in", "10 cm", 0.3125)),
          lure("Paddle tail", PLASTICS, 8, 6, 1, 12, 5, 6.49, 1, 1)
              .sized(
                  "Pearl,Silver shad,Smoke,Chartreuse,Bluegill",
                  size("4 in", "10 cm", 0.40625),
                  size("5 in", "13 cm", 0.6875)),
          lure("Tube", PLASTICS, 8, 4, 3, 11, 10, 4.99, 1, 0.8)
              .sized("Green pumpkin,Smoke,Brown,Black blue,White", size("4 in", "10 cm", 0.3125)),
          lure("Offset worm hook", TERMINAL, 7, 0, 1, 12, 5, 4.49, 1, 1.3)
              .sized(
                  "",
                  size("4/0", "4/0", 0.0625),
                  size("3/0", "3/0", 0.05),
                  size("5/0", "5/0", 0.08)),
          lure("Bullet weight", TERMINAL, 6, 0, 1, 12, 5, 6.99, 1, 1.3)
              .sized(
                  "Black,Green pumpkin",
                  size("3/8 oz", "11 g", 0.375),
                  size("1/8 oz", "4 g", 0.125),
                  size("3/16 oz", "5 g", 0.1875),
                  size("1/4 oz", "7 g", 0.25),
                  size("1/2 oz", "14 g", 0.5),
                  size("3/4 oz", "21 g", 0.75)),
          lure("Drop shot weight", TERMINAL, 8, 0, 1, 12, 5, 4.49, 1, 1)
              .sized(
                  "",
                  size("1/4 oz", "7 g", 0.25),
                  size("3/16 oz", "5 g", 0.1875),
                  size("3/8 oz", "11 g", 0.375),
                  size("1/2 oz", "14 g", 0.5)),
          lure("Ball head jig", TERMINAL, 7, 0, 1, 12, 4, 4.29, 1, 1)
              .sized(
                  "",
                  size("1/4 oz", "7 g", 0.28125),
                  size("3/16 oz", "5 g", 0.21875),
                  size("3/8 oz", "11 g", 0.40625)),
          gear("Casting rod", 129, 6, 1.25)
              .sized(
                  "",
                  size("7 ft M", "213 cm M", 15),
                  size("7 ft MH", "214 cm MH", 15.5),
                  size("7 ft 3 H", "221 cm H", 16),
                  size("7 ft 6 H", "229 cm H", 16.5),
                  size("6 ft 8 M", "203 cm M", 14.5)),
          gear("Spinning rod", 119, 2, 1.5)
              .sized("", size("7 ft ML", "213 cm ML", 13), size("6 ft 10 M", "208 cm M", 12.5)),
          gear("Landing net", 59, 1, 1)
              .sized("", size("Long handle", "Long handle", 42), size("Folding", "Folding", 24)),
          gear("Hand tool", 18, 2, 1)
              .sized(
                  "",
                  size("Pliers", "Pliers", 7),
                  size("Line scissors", "Line scissors", 2.5),
                  size("Hook file", "Hook file", 1.5),
                  size("Split ring pliers", "Split ring pliers", 4)));

  private DemoTackle() {}

  static DemoStyle style(String name) {
    return STYLES.stream().filter(style -> style.name().equals(name)).findFirst().orElseThrow();
  }

  static List<Item> items() {
    List<Item> items = new ArrayList<>();
    STYLES.forEach(style -> items.addAll(style.items()));
    return items;
  }

  private static Size size(String us, String metric, double ounces) {
    return new Size(us, metric, ounces);
  }

  private static DemoStyle lure(
      String name,
      String family,
      double lossesPer10Hours,
      double popularity,
      int firstMonth,
      int lastMonth,
      int piecesPerPack,
      double price,
      int carryAtLeast,
      double importance) {
    return new DemoStyle(
        name,
        family,
        lossesPer10Hours,
        popularity,
        firstMonth,
        lastMonth,
        piecesPerPack,
        price,
        carryAtLeast,
        0,
        1,
        importance,
        NO_SIZE,
        List.of(""));
  }

  private static DemoStyle gear(String name, double price, int neededAtOnce, double spareFactor) {
    return new DemoStyle(
        name, GEAR, 0, 0, 1, 12, 1, price, 1, neededAtOnce, spareFactor, 1, NO_SIZE, List.of(""));
  }
}
