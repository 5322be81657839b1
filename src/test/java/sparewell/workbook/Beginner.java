package sparewell.workbook;

import java.nio.file.Path;

/**
 * The workbook of an angler who has just begun: 6 styles, 15 items, 5 boxes, 4 compartments, 2
 * trips, no dates of counts, no sizes; and two slips of the pen, in Stock and in Losses.
 */
public final class Beginner {
  private Beginner() {}

  /** Writes it. */
  public static Path write(Path file) {
    return book().write(file);
  }

  /** Not written yet. */
  public static Books book() {
    return Books.empty()
        .with("Settings", "Setting|Value\nUnits|us\nAs of|2026-05-20")
        .with(
            "Styles",
            "Style|Family|Weight each|Pack price\n"
                + "Stick worm|Worms|0.3|4.50\n"
                + "Craw|Worms|0.35|5.00\n"
                + "Flipping jig|Jigs|0.5|4.00\n"
                + "Spinnerbait|Wire baits|0.5|7.00\n"
                + "Squarebill|Crankbaits|0.4|8.00\n"
                + "Topwater frog|Frogs|0.6|9.00")
        .with(
            "Stock",
            "Style|Size|Colour|Box|Count\n"
                + "Stick worm|5 in|Green pumpkin|Worm box|14\n"
                + "Stick worm|5 in|Black blue|Worm box|6\n"
                + "Stick worm|4 in|Watermelon|Worm box|9\n"
                + "Craw|4 in|Green pumpkin|Worm box|tree\n"
                + "Craw|4 in|Black blue|Worm box|7\n"
                + "Flipping jig|1/2 oz|Black blue|Jig box|4\n"
                + "Flipping jig|1/2 oz|Brown|Jig box|3\n"
                + "Flipping jig|3/8 oz|Brown|Jig box|2\n"
                + "Spinnerbait|1/2 oz|White|Wire box|3\n"
                + "Spinnerbait|3/8 oz|Chartreuse|Wire box|2\n"
                + "Squarebill|S|Red craw|Crank box|3\n"
                + "Squarebill|S|Shad|Crank box|3\n"
                + "Squarebill|M|Shad|Crank box|2\n"
                + "Topwater frog||Black|Crank box|2\n"
                + "Stick worm|5 in|Green pumpkin|Bin|20\n"
                + "Flipping jig|1/2 oz|Black blue|Bin|5")
        .with(
            "Boxes",
            "Box|Compartment|Empty weight\n"
                + "Worm box|Bow locker|0.9\n"
                + "Jig box|Bow locker|0.7\n"
                + "Wire box|Port locker|0.7\n"
                + "Crank box|Port locker|0.8\n"
                + "Bin|Garage|")
        .with(
            "Compartments",
            "Compartment|From transom|From centreline|Ashore\n"
                + "Bow locker|150|0|no\n"
                + "Port locker|60|-20|no\n"
                + "Stern locker|15|0|no\n"
                + "Garage|0||yes")
        .with(
            "Trips",
            "Trip|Date|Hours|Cover\n"
                + "First outing|2026-05-02|6|grass\nSecond outing|2026-05-16|5|wood")
        .with(
            "Losses",
            "Trip|Style|Size|Colour|Lost|Cause\n"
                + "First outing|Stick worm|5 in|Green pumpkin|3|snag\n"
                + "Second outing|Stck worm|5 in|Black blue|1|fish\n"
                + "Second outing|Flipping jig|1/2 oz|Black blue|1|snag");
  }
}
