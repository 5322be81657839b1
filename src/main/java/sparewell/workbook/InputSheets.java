package sparewell.workbook;

import static sparewell.workbook.InputColumn.optional;
import static sparewell.workbook.InputColumn.required;

import java.util.List;
import sparewell.workbook.InputColumn.Kind;

/** Declarations of all input sheets, for reading, templates and the column guide. */
public final class InputSheets {
  private static final InputColumn SIZE =
      optional("Size", Kind.SIZE, "no size", "Size, as you call it.")
          .inFiles("Lure size", "Bait size");
  private static final InputColumn COLOUR =
      optional("Colour", Kind.TEXT, "no colour", "Colour, as you call it.")
          .alias("Color")
          .inFiles("Lure colour", "Lure color", "Bait colour", "Bait color");
  private static final InputColumn NOTE =
      optional("Note", Kind.TEXT, "", "Anything you like.")
          .inFiles("Notes", "Comment", "Comments", "Remark", "Remarks");
  private static final String[] OTHER_TRIPS = {"Trip name", "Trip id", "Name of trip", "Outing"};
  private static final String[] OTHER_STYLES = {
    "Lure", "Lure style", "Lure name", "Bait", "Bait name", "Item"
  };
  private static final String[] OTHER_COUNTS = {
    "Quantity", "How many", "Number", "Amount", "Pieces"
  };
  private static final String[] OTHER_BOXES = {"Tray", "Box name", "Container"};
  private static final InputColumn COVER =
      optional("Cover", Kind.TEXT, "the usual mix", "Kind of cover fished, such as wood or grass.")
          .forgiving();
  private static final InputColumn WATER =
      optional("Water", Kind.TEXT, "", "Where.")
          .forgiving()
          .inFiles("Lake", "River", "Where", "Place", "Location");
  private static final InputColumn DAYS =
      optional("Days", Kind.DAYS, "1", "How many days; hours are the total over them.")
          .forgiving()
          .within(0.1, 100_000, "days")
          .inFiles("Number of days", "How many days");
  private static final InputColumn CHANCE =
      optional(
              "Chance wanted",
              Kind.CHANCE,
              "the setting",
              "Wanted chance of not running out, between 0 and 1.")
          .forgiving();

  private static final InputColumn TRIP =
      required("Trip", Kind.TEXT, "Trip name or date.").refersTo("Trips").inFiles(OTHER_TRIPS);
  private static final InputColumn LIES_IN =
      required("Box", Kind.TEXT, "Box, or the compartment it lies loose in.").refersTo("Boxes");
  private static final InputColumn LOG_DATE =
      required("Date", Kind.DATE, "When; of two rows of one day the lower one counts.");
  private static final InputColumn FROM_TRANSOM =
      required("From transom", Kind.POSITION, "Distance of its centre from the transom, forward.");
  private static final InputColumn FROM_CENTRELINE =
      optional("From centreline", Kind.POSITION, "0", "Offset of its centre, starboard positive.")
          .forgiving()
          .alias("From centerline");

  public static final InputSheet SETTINGS =
      new InputSheet(
          "Settings",
          false,
          "Options of the analysis; leave blank what you do not care about.",
          List.of(
              required("Setting", Kind.TEXT, "Name of the setting."),
              required("Value", Kind.BY_ROW, "Its value; blank = the standard value."),
              NOTE));

  public static final InputSheet STYLES =
      new InputSheet(
          "Styles",
          true,
          "Each style of lure once, with what all its sizes and colours share; rods and tools too.",
          List.of(
              required("Style", Kind.TEXT, "Name of the style."),
              required("Family", Kind.TEXT, "Group of styles that are lost alike."),
              optional("Weight each", Kind.ITEM_MASS, "not known", "Weight of one piece.")
                  .within(0, 50, "kg")
                  .forgiving(),
              optional("Counted in", Kind.CHOICE, "pieces", "What Count means for this style.")
                  .forgiving()
                  .oneOf("pieces", "packs"),
              optional("Pieces per pack", Kind.PIECES, "1", "Pieces in one pack as bought.")
                  .within(1, 10_000, "pieces")
                  .forgiving(),
              optional("Pack price", Kind.MONEY, "not known", "Price of one pack.")
                  .within(0, 100_000, "")
                  .forgiving(),
              optional(
                      "Carry at least",
                      Kind.COUNT,
                      "the setting",
                      "Least of each item aboard, in what the style is counted in.")
                  .within(0, 1000, "pieces")
                  .forgiving(),
              optional("Needed at once", Kind.PIECES, "0", "Pieces in use together, such as rods.")
                  .within(0, 1000, "pieces")
                  .forgiving(),
              optional("Spare factor", Kind.NUMBER, "1", "Needed at once is multiplied with it.")
                  .within(0, 100, "")
                  .forgiving(),
              optional(
                      "Importance",
                      Kind.NUMBER,
                      "1",
                      "How much a missing piece matters beside other styles.")
                  .within(0, 1000, "")
                  .forgiving(),
              CHANCE));

  public static final InputSheet STOCK =
      new InputSheet(
          "Stock",
          true,
          "What you have: one row for each item in each box.",
          List.of(
              style("Style, as in Styles.").inFiles(OTHER_STYLES),
              SIZE,
              COLOUR,
              LIES_IN.inFiles(OTHER_BOXES),
              count().inFiles(OTHER_COUNTS),
              optional("Weight each", Kind.ITEM_MASS, "the style's", "Weight of one piece.")
                  .within(0, 50, "kg"),
              optional("Pack price", Kind.MONEY, "the style's", "Price of one pack.")
                  .within(0, 100_000, ""),
              optional("Carry at least", Kind.COUNT, "the style's", "Least of this item aboard.")
                  .within(0, 1000, "pieces")
                  .forgiving(),
              optional(
                  "Counted on",
                  Kind.DATE,
                  "the setting Stock counted on",
                  "Date of your last count."),
              NOTE));

  public static final InputSheet BOXES =
      new InputSheet(
          "Boxes",
          true,
          "Each box or bag once.",
          List.of(
              required("Box", Kind.TEXT, "What its label says."),
              required("Compartment", Kind.TEXT, "Where it stands now.").refersTo("Compartments"),
              size("Length", "not checked for fit", "Outer length.", 10),
              size("Width", "not checked for fit", "Outer width.", 10),
              size("Height", "not checked for fit", "Outer height.", 10),
              optional("Empty weight", Kind.LOAD_MASS, "not known", "Weight without contents.")
                  .within(0, 1000, "kg")
                  .forgiving(),
              optional("Tape colour", Kind.TEXT, "", "Colour of its tape.")
                  .forgiving()
                  .alias("Tape color"),
              yesNo("Stays put", "Yes if it must not be moved."),
              yesNo("At hand", "Yes if it must be within reach all day."),
              optional("Last checked", Kind.DATE, "", "When you last checked its contents.")
                  .forgiving(),
              optional("Check every (days)", Kind.PIECES, "never", "Days between checks.")
                  .within(0, 10_000, "days")
                  .forgiving()
                  .alias("Check every")));

  public static final InputSheet COMPARTMENTS =
      new InputSheet(
          "Compartments",
          true,
          "Each compartment of the boat once, and storage at home.",
          List.of(
              required("Compartment", Kind.TEXT, "Its name."),
              FROM_TRANSOM,
              FROM_CENTRELINE,
              size("Length", "not checked", "Inner length.", 30),
              size("Width", "not checked", "Inner width.", 30),
              size("Height", "not checked", "Inner height.", 30),
              optional("Max load", Kind.LOAD_MASS, "not checked", "Most weight it may hold.")
                  .within(0, 10_000, "kg")
                  .forgiving(),
              yesNo("At hand", "Yes if within reach all day."),
              yesNo("Ashore", "Yes for storage at home.")));

  public static final InputSheet TRIPS =
      new InputSheet(
          "Trips",
          true,
          "One row for each trip.",
          List.of(
              optional("Trip", Kind.TEXT, "the date", "A short name of your own.")
                  .inFiles(OTHER_TRIPS),
              required("Date", Kind.DATE, "First day.")
                  .inFiles("Day", "Trip date", "Date of trip", "First day"),
              WATER,
              required("Hours", Kind.HOURS, "Hours fished in all.")
                  .within(0, 100_000, "hours")
                  .inFiles("Hours fished", "Hrs", "Hrs fished", "Total hours", "Time fished"),
              DAYS,
              COVER,
              NOTE));

  public static final InputSheet STYLE_HOURS =
      new InputSheet(
          "Style hours",
          false,
          "How long each style was thrown on a trip; a guess is fine.",
          List.of(
              TRIP,
              style("Style thrown.").inFiles(OTHER_STYLES),
              required("Hours", Kind.HOURS, "Hours it was thrown.")
                  .within(0, 100_000, "hours")
                  .inFiles("Hours thrown", "Hrs", "Hrs thrown", "Time thrown")));

  public static final InputSheet LOSSES =
      new InputSheet(
          "Losses",
          true,
          "What was lost on which trip.",
          List.of(
              TRIP,
              style("Style lost.").inFiles(OTHER_STYLES),
              SIZE,
              COLOUR,
              required("Lost", Kind.PIECES, "Pieces lost.")
                  .within(0, 10_000, "pieces")
                  .inFiles(
                      "How many",
                      "Lost pieces",
                      "Pieces lost",
                      "Number lost",
                      "Qty",
                      "Quantity",
                      "Number",
                      "Count",
                      "Pieces"),
              optional("Cause", Kind.CHOICE, "other", "Why.")
                  .forgiving()
                  .inFiles("Why", "How", "Lost to")
                  .oneOf("snag", "fish", "broken", "worn", "other"),
              yesNo("Ran out", "Yes if you had none left.").inFiles("None left", "Used up"),
              NOTE));

  public static final InputSheet RESTOCKS =
      new InputSheet(
          "Restocks",
          false,
          "What you added, and when.",
          List.of(
              required("Date", Kind.DATE, "When.").inFiles("Day", "Bought on", "When"),
              style("Style added.").inFiles(OTHER_STYLES),
              SIZE,
              COLOUR,
              required("Box", Kind.TEXT, "Box it went into.")
                  .refersTo("Boxes")
                  .inFiles(OTHER_BOXES),
              count().inFiles(OTHER_COUNTS),
              optional("Cost", Kind.MONEY, "not known", "What you paid for the row.")
                  .within(0, 1e7, "")
                  .forgiving()
                  .inFiles("Price", "Paid", "Total", "Total cost")));

  public static final InputSheet TRANSFERS =
      new InputSheet(
          "Transfers",
          false,
          "What you carried from box to box, and when. Optional: the stock then follows by itself.",
          List.of(
              required("Date", Kind.DATE, "When."),
              style("Style carried."),
              SIZE,
              COLOUR,
              count(),
              required("From box", Kind.TEXT, "Box, or compartment, it was taken from.")
                  .refersTo("Boxes")
                  .alias("From"),
              required("To box", Kind.TEXT, "Box, or compartment, it went into.")
                  .refersTo("Boxes")
                  .alias("To"),
              NOTE));

  public static final InputSheet BOX_LOG =
      new InputSheet(
          "Box log",
          false,
          "Which box was moved or checked, and when. Optional: the last row of a box beats Boxes.",
          List.of(
              LOG_DATE,
              required("Box", Kind.TEXT, "Box, as in Boxes.").refersTo("Boxes"),
              optional("Compartment", Kind.TEXT, "not moved", "Where it was moved to.")
                  .refersTo("Compartments"),
              optional("Checked", Kind.YES_NO, "no", "Yes if you checked its contents."),
              NOTE));

  public static final InputSheet COUNTS =
      new InputSheet(
          "Counts",
          false,
          "What you counted again, and when. Optional: the last count beats Count in Stock.",
          List.of(LOG_DATE, style("Style counted."), SIZE, COLOUR, LIES_IN, count(), NOTE));

  public static final InputSheet EVENTS =
      new InputSheet(
          "Events",
          false,
          "What is coming.",
          List.of(
              required("Event", Kind.TEXT, "A short name of your own."),
              required("Date", Kind.DATE, "First day."),
              WATER,
              required("Hours", Kind.HOURS, "Hours you will fish in all.")
                  .within(0.1, 1000, "hours"),
              DAYS,
              COVER,
              optional("Box", Kind.TEXT, "none", "Box to pack for it.")
                  .forgiving()
                  .refersTo("Boxes"),
              optional("Slots", Kind.PIECES, "no limit", "Pockets in that box.")
                  .within(0, 10_000, "")
                  .forgiving(),
              CHANCE));

  public static final InputSheet EVENT_PLAN =
      new InputSheet(
          "Event plan",
          false,
          "Which styles you mean to throw at an event, and how long.",
          List.of(
              required("Event", Kind.TEXT, "Event, as in Events.").refersTo("Events"),
              style("Style planned."),
              required("Hours", Kind.HOURS, "Hours over all rods and anglers.")
                  .within(0.01, 3000, "hours"),
              optional("Colours", Kind.TEXT, "all in stock", "Colours, separated by commas.")
                  .alias("Colors", "Colour", "Color")));

  public static final InputSheet LOADS =
      new InputSheet(
          "Loads",
          false,
          "What the boat carries beside tackle.",
          List.of(
              required("Load", Kind.TEXT, "Its name."),
              required("Weight", Kind.LOAD_MASS, "Its weight.").within(0, 50_000, "kg"),
              FROM_TRANSOM,
              FROM_CENTRELINE,
              optional("Kind", Kind.CHOICE, "gear", "What it is.")
                  .forgiving()
                  .oneOf("hull", "motor", "person", "fuel", "battery", "gear")));

  public static final InputSheet BOAT =
      new InputSheet(
          "Boat",
          false,
          "Figures from the capacity plate and from your own test.",
          List.of(
              required("Item", Kind.TEXT, "Name of the figure."),
              required("Value", Kind.BY_ROW, "Its value; blank = not known.")));

  /** Every input sheet, in the order of the workbook, which also decides on spellings. */
  public static final List<InputSheet> ALL =
      List.of(
          SETTINGS,
          STYLES,
          STOCK,
          BOXES,
          COMPARTMENTS,
          TRIPS,
          STYLE_HOURS,
          LOSSES,
          RESTOCKS,
          TRANSFERS,
          BOX_LOG,
          COUNTS,
          EVENTS,
          EVENT_PLAN,
          LOADS,
          BOAT);

  private InputSheets() {}

  private static InputColumn style(String meaning) {
    return required("Style", Kind.TEXT, meaning).refersTo("Styles");
  }

  private static InputColumn count() {
    return required("Count", Kind.COUNT, "How many, in what the style is counted in.")
        .within(0, 100_000, "pieces")
        .alias("Qty");
  }

  private static InputColumn size(String name, String standard, String meaning, double most) {
    return optional(name, Kind.LENGTH, standard, meaning).within(0.005, most, "m").forgiving();
  }

  private static InputColumn yesNo(String name, String meaning) {
    return optional(name, Kind.YES_NO, "no", meaning).forgiving();
  }
}
