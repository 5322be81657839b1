package sparewell.finding;

import static sparewell.finding.Severity.ERROR;
import static sparewell.finding.Severity.NOTE;
import static sparewell.finding.Severity.WARNING;

import java.util.List;

/**
 * Kinds of finding: id, severity, fault and consequence. The details of a finding fill both formats
 * ({@code %1$s} is the first detail); a kind without a consequence of its own has its third detail.
 * Ids are never reused: people search for them.
 */
public enum Code {
  // Reading the workbook
  NOT_A_NUMBER("I-001", ERROR, "'%1$s' in %2$s is not a number; write it like 12.5"),

  // Reading the workbook: single cells. Details: content, column, what was done, more
  REQUIRED_BLANK("I-002", ERROR, "%2$s is blank, but the row needs it; fill it in"),
  ERROR_VALUE("I-003", ERROR, "the cell in %2$s shows the error %1$s; correct its formula"),
  DAMAGED_CELL("I-004", ERROR, "the cell in %2$s holds %1$s; type it again"),
  NEGATIVE("I-005", ERROR, "%1$s in %2$s is below zero; write it without the minus"),
  NOT_WHOLE("I-006", ERROR, "%1$s in %2$s is not a whole number of pieces"),
  NOT_POSITIVE("I-007", ERROR, "%1$s in %2$s must be above zero"),
  TOO_LARGE("I-008", ERROR, "%1$s in %2$s is too large (at most %4$s)"),
  UNKNOWN_UNIT("I-009", ERROR, "'%1$s' in %2$s has no known unit: %4$s"),
  BOOLEAN_AS_NUMBER("I-010", ERROR, "%1$s in %2$s is yes or no, not a number; type the number"),
  DATE_AS_NUMBER(
      "I-011",
      ERROR,
      "%2$s holds a date (%1$s), not a number; give the cell a number format and type the"
          + " number again"),
  NOT_A_DATE(
      "I-012",
      ERROR,
      "'%1$s' in %2$s is not a date between 1950 and 2199; write it like 2026-05-03"),
  NOT_YES_NO("I-013", ERROR, "'%1$s' in %2$s is neither yes nor no"),
  NOT_A_CHOICE("I-014", ERROR, "'%1$s' in %2$s is none of: %4$s"),
  BAD_CHANCE(
      "I-015", ERROR, "%1$s in %2$s is not a chance; write a number between 0 and 1, like 0.95"),
  UNKNOWN_KEY("I-016", ERROR, "'%1$s' in %2$s is not in %4$s"),
  LEFT_OUT_KEY(
      "I-017", ERROR, "'%1$s' in %2$s is in a row that was left out: %4$s; correct that row first"),
  AMBIGUOUS_DATE(
      "I-018", ERROR, "'%1$s' in %2$s is the date of more than one trip; name the trip instead"),
  DUPLICATE("I-019", ERROR, "'%1$s' in %2$s is already in %4$s; the first counts"),
  TRIP_NAME_TAKEN(
      "I-141",
      ERROR,
      "the name '%1$s' in %2$s is that of %4$s, a trip of %5$s; rename this one, for"
          + " example to '%1$s %6$s', in its losses and style hours too"),
  OUT_OF_RANGE("I-020", ERROR, "'%1$s' in %2$s is not allowed: %4$s"),
  TRIP_WITHOUT_HOURS(
      "I-021",
      ERROR,
      "%2$s '%1$s': the hours of a trip must be at least 0.1",
      "trip left out of the loss rates; its losses still come off the stock"),
  DATE_AS_FRACTION(
      "I-030",
      WARNING,
      "the spreadsheet program took what was typed in %2$s for a date (%1$s); format the"
          + " column as text or type a space first",
      "read as %3$s"),
  COMMA_NUMBER(
      "I-031", WARNING, "'%1$s' in %2$s has a comma; write numbers like 12.5", "read as %3$s"),
  PERCENT_CHANCE(
      "I-032",
      WARNING,
      "%1$s in %2$s looks like percent; write a chance like 0.95",
      "read as %3$s"),
  WORD_BEHIND_COUNT(
      "I-142",
      WARNING,
      "'%1$s' in %2$s has a word after the number; write the number alone",
      "read as %3$s"),
  UNIT_IN_CELL("I-033", WARNING, "'%1$s' in %2$s has another unit than the column", "read as %3$s"),
  PART_OF_PIECE(
      "I-034", WARNING, "%1$s packs in %2$s are not a whole number of pieces", "read as %3$s"),
  ASSUMED_DATE(
      "I-035",
      WARNING,
      "'%1$s' in %2$s is not written as a date; write it like 2026-05-03",
      "read as %3$s"),
  TIME_AS_HOURS(
      "I-036", WARNING, "'%1$s' in %2$s is a time of day; write hours like 6.5", "read as %3$s"),
  CONTROL_CHARACTERS(
      "I-037", WARNING, "the text in %2$s held control characters", "read as '%3$s'"),
  FORMULA_COMPUTED(
      "I-038",
      WARNING,
      "the workbook holds no value for the formula in %2$s; open it in a spreadsheet"
          + " program and save it",
      "computed: %1$s"),
  FORMULA_BLANK(
      "I-039",
      WARNING,
      "the workbook holds no value for the formula in %2$s, and it could not be computed;"
          + " open it in a spreadsheet program and save it",
      "read as blank"),
  DATE_AS_NAME(
      "I-040",
      WARNING,
      "the spreadsheet program took what was typed in %2$s for a date; format the column as"
          + " text and type it again",
      "read as %3$s"),
  CAUSE_AS_OTHER("I-041", WARNING, "'%1$s' in %2$s is none of: %4$s", "read as %3$s"),
  DID_YOU_MEAN(
      "I-042",
      WARNING,
      "'%1$s' in %2$s differs from '%4$s' by a letter or two; did you mean that?"),

  // Reading the workbook: sheets, settings and rows
  HEADER_TWICE("I-050", WARNING, "two columns are headed '%1$s'", "the first counts"),
  HEADER_UNIT("I-051", WARNING, "'%1$s' names no unit known for this column: %2$s", "read in %3$s"),
  SHEET_TWICE(
      "I-052",
      WARNING,
      "this sheet's name reads like '%1$s'",
      "the first counts, this one is not read"),
  SHEET_WITHOUT_HEADER(
      "I-053", WARNING, "none of the first 20 rows holds all of the columns %1$s", "sheet ignored"),
  SHEET_NAME_NEAR(
      "I-054", WARNING, "this sheet is not read; did you mean to call it '%1$s'?", "sheet ignored"),
  UNKNOWN_SETTING("I-055", WARNING, "there is no '%1$s' in %2$s%3$s", "row ignored"),
  SAME_DATE_TRIPS(
      "I-056",
      WARNING,
      "this trip has no name, and another trip has its date %1$s; name it",
      "the date alone is taken for this trip"),
  CHANCE_OPTION_PERCENT(
      "I-057", WARNING, "the chance %1$s looks like percent; write it like 0.95", "read as %2$s"),
  BLANK_PACK_SIZE(
      "I-058",
      WARNING,
      "style '%1$s' is counted in packs, but Pieces per pack is blank",
      "read as 1 piece in a pack"),
  LABELS_WIDER_THAN_PAPER(
      "I-140",
      WARNING,
      "%1$s labels of %2$s mm side by side are wider than a sheet of paper",
      "%3$s side by side"),
  AFTER_AS_OF("I-070", NOTE, "%1$s is after the date of analysis %2$s", "row ignored"),
  NO_ROWS("I-071", NOTE, "the sheet has a header but no rows", "read as empty"),
  ITEM_NOT_IN_STOCK(
      "I-072", NOTE, "%1$s is not in stock", "counted for the style %2$s and shared by its items"),
  ITEM_PARTLY_NAMED(
      "I-073",
      NOTE,
      "losses of style %2$s name no size or colour (pieces: %1$s)",
      "counted for the style and shared by its items"),
  ONLY_ITEM(
      "I-074",
      NOTE,
      "losses of style %2$s name no size or colour (pieces: %1$s), but only one item can be"
          + " meant",
      "taken as %3$s"),
  TEST_INCOMPLETE("I-075", NOTE, "the %1$s test lacks %2$s", "test not used"),
  MORE_LIKE_THIS(
      "I-076",
      NOTE,
      "there are %1$s more notes like the last of this kind (%2$s)",
      "treated alike"),
  SAME_PLACE_TWICE("I-077", NOTE, "%1$s has two rows in '%2$s'", "both rows are counted together"),

  TRANSFER_TO_ITSELF("I-170", WARNING, "from box and to box are both '%1$s'", "row ignored"),
  BOX_LOG_SAYS_NOTHING(
      "I-171", WARNING, "the row names no Compartment, and Checked is not yes", "row ignored"),

  // Stock on hand
  RECOUNT(
      "I-100",
      WARNING,
      "%1$s: more was lost since the count than was there (%2$s too many)",
      "on hand taken as 0; recount it"),
  CARRIED_TOO_MANY(
      "I-172",
      WARNING,
      "%1$s: %3$s more were taken out of '%2$s' than were there",
      "counted as 0 there, and in full where they went; recount both"),
  COUNT_WITHOUT_DATE(
      "I-173",
      WARNING,
      "Counted on is blank, so the stock follows neither losses nor restocks (pieces left"
          + " out: %1$s)",
      "such counts are taken as today's; type their date once, in Settings beside 'Stock"
          + " counted on'"),
  PUT_BEFORE_COUNT(
      "I-174",
      NOTE,
      "%1$s was put into '%2$s' before its count of %3$s, and has no Stock row there",
      "taken as part of that count; if it lies there still, add it to Counts"),
  LOSS_WITHOUT_ITEM(
      "I-101",
      NOTE,
      "%1$s lost pieces of style %2$s since its last count name no item in stock",
      "not taken off any item; recount the style"),
  RESTOCK_WITHOUT_ROW(
      "I-102", NOTE, "%1$s has no Stock row in '%2$s'", "counted there from this restock on"),
  COUNTED_IN_FUTURE(
      "I-103",
      WARNING,
      "Counted on %1$s is after the date of analysis %2$s",
      "the count is taken as it is"),

  // Loss rates
  LOSS_WITHOUT_STYLE_HOURS(
      "N-001",
      WARNING,
      "%1$s was lost on trip %2$s, but the Style hours of that trip leave it out",
      "counted as thrown for %3$s hours, its usual share of the trip; add the hours to be exact"),
  HOURS_UNREAD(
      "N-950",
      WARNING,
      "%1$s was thrown on trip %2$s for hours that cannot be read",
      "counted as thrown for %3$s hours there, its usual share of the trip, against its losses"
          + " (%4$s); mend the cell to be exact"),
  NO_STYLE_HOURS(
      "N-002",
      NOTE,
      "no trip has Style hours",
      "loss rates are per hour afloat, for every style alike; log Style hours to tell"
          + " styles apart"),
  NO_TRIPS_TO_FIT(
      "N-003",
      NOTE,
      "no trip with hours is logged",
      "loss rates are a guess made for any angler until the first trip is logged"),
  RATES_NOT_SETTLED(
      "N-004",
      WARNING,
      "the loss rates did not settle on one best fit",
      "rates and chances are averaged over a wide range of fits and are less certain than shown"),
  LOSS_WITHOUT_SHARE(
      "N-006",
      WARNING,
      "%1$s was lost on trip %2$s, but no trip with Style hours ever has it",
      "counted as thrown for %3$s hours, the share of an average style; add the hours to be exact"),
  COVER_NEVER_LOGGED(
      "N-007",
      NOTE,
      "no trip was logged in the cover '%1$s' of event %2$s",
      "losses are forecast for the usual mix of cover, with more uncertainty"),

  // Spares, buying and the event box
  PLAN_STYLE_NOT_IN_STOCK(
      "S-001",
      WARNING,
      "'%1$s' is in the plan of %2$s, but no row of Stock has it",
      "nothing planned for it; add a Stock row, with Count 0 if you have none"),
  PLAN_COLOUR_NOT_IN_STOCK(
      "S-002",
      WARNING,
      "colour '%1$s' of '%2$s' is in the plan of %3$s, but no row of Stock has it",
      "%4$s; add a Stock row, with Count 0 if you have none"),
  NEEDED_BUT_NOT_IN_STOCK(
      "S-003",
      WARNING,
      "'%1$s' needs %2$d at once, but no row of Stock has it",
      "left out of the spares; add a Stock row, with Count 0 if you have none"),
  PRICE_NOT_KNOWN(
      "S-004",
      NOTE,
      "'%1$s' is to be bought, but its pack price is not known",
      "listed after the priced lines, outside the budget; fill in Pack price"),
  EVENT_BOX_NOT_ENOUGH_SLOTS(
      "S-005",
      NOTE,
      "%1$s wants %2$d pockets, but its box has %3$d",
      "the pockets went where they save most; the rest stays aboard where it is"),
  EVENT_BOX_ASHORE(
      "S-180",
      WARNING,
      "'%1$s', the box of %2$s, stands ashore; give it a compartment aboard in Boxes or the"
          + " Box log",
      "not packed: the list names what to have at hand"),

  // Load and stowing
  COMPARTMENT_OVER_LOAD(
      "L-001",
      ERROR,
      "%1$s holds %2$s now, %3$s over its max load of %4$s",
      "the stow plan keeps to the limit where it can"),
  COMPARTMENT_OVER_VOLUME(
      "L-002",
      ERROR,
      "the boxes in %1$s take %2$s, %3$s over its usable volume of %4$s",
      "the stow plan keeps to the limit where it can"),
  SIDE_OVER_TOLERANCE(
      "L-003",
      WARNING,
      "the tackle pulls to %1$s with %2$s; the side tolerance set is %3$s",
      "%4$s"),
  BOX_DOES_NOT_FIT(
      "L-004",
      ERROR,
      "%1$s does not fit into %2$s in any orientation",
      "the stow plan looks for another compartment"),
  BOX_NOT_AT_HAND(
      "L-005",
      ERROR,
      "%1$s should be at hand but stands in %2$s, which is not",
      "the stow plan looks for another compartment"),
  BOX_FITS_NOWHERE(
      "L-006",
      ERROR,
      "%1$s fits into no compartment aboard%2$s",
      "it counts where it stands, the rest is planned around it; check its size or take it"
          + " ashore"),
  FIXED_BOX_AGAINST_LIMIT(
      "L-007",
      ERROR,
      "%1$s stays put in %2$s although %3$s",
      "it counts where it stands; clear 'Stays put' to let the plan move it"),
  FIXED_OVER_LIMIT(
      "L-008",
      ERROR,
      "what cannot be moved in %1$s is already %2$s over its %3$s",
      "no other box is planned into it; take something out"),
  NO_STOW_PLAN(
      "L-009",
      ERROR,
      "%1$s: in the closest plan %2$s%3$s",
      "boxes are left where they are; take something ashore or ease a limit"),
  BOX_SIZE_UNKNOWN(
      "L-010",
      NOTE,
      "%1$s has no size",
      "not checked for fit, and its volume is not counted; measure length, width and height"),
  COMPARTMENT_SIZE_UNKNOWN(
      "L-011",
      NOTE,
      "%1$s has no size",
      "fit and volume are not checked there; measure length, width and height"),
  NO_MAX_LOAD("L-012", NOTE, "%1$s has no max load", "the weight in it is not checked"),
  BOX_WEIGHT_UNKNOWN(
      "L-013",
      WARNING,
      "%1$s has no empty weight",
      "it counts with what is in it alone, at least %2$s; weigh it for a better plan"),
  OVER_PLATE(
      "L-015",
      ERROR,
      "the load is%1$s %2$s, %3$s OVER the capacity plate's %4$s",
      "take weight out before going afloat; the plate and the maker's manual are the limit"),
  OVER_PLATE_PERSONS(
      "L-016",
      ERROR,
      "the persons weigh %1$s, %2$s OVER the capacity plate's %3$s for persons",
      "fewer persons aboard; the plate and the maker's manual are the limit"),
  PLATE_NOT_CHECKED(
      "L-017",
      NOTE,
      "no %1$s is given",
      "not checked; read it off the boat's capacity plate or the maker's manual"),
  SIDE_OVER_USUAL(
      "L-190",
      NOTE,
      "the tackle pulls to %1$s with %2$s; the usual side tolerance is %3$s",
      "%4$s; set Side tolerance to choose your own"),
  PLATE_WITHOUT_LOADS(
      "L-018",
      WARNING,
      "the load is compared with the plate but no %1$s is listed in Loads",
      "the margin shown is too large; list persons, motor, batteries and fuel"),
  TEST_NOT_USABLE(
      "L-019",
      WARNING,
      "the %1$s test cannot be used: %2$s",
      "no figure is given; repeat the test with a heavier weight or a longer way"),

  // Checks over the whole season
  STYLE_WITHOUT_STOCK(
      "I-120",
      NOTE,
      "style '%1$s' has no row in Stock",
      "its losses count for its rate, but there is no item to carry"),
  BOX_WITHOUT_STOCK("I-121", NOTE, "box '%1$s' holds nothing", "weighed empty"),
  COMPARTMENT_EMPTY(
      "I-122",
      NOTE,
      "compartment '%1$s' holds no box and no loose stock",
      "nothing; it is free for the stow plan"),
  BOX_CHECK_DUE(
      "I-123",
      NOTE,
      "the check of box '%1$s' was due on %2$s",
      "listed on the front page; check it and tick it off there"),
  BOX_NEVER_CHECKED(
      "I-124",
      NOTE,
      "box '%1$s' has a check every %2$s days but no Last checked",
      "listed on the front page; check it and tick it off there"),
  STYLE_HOURS_BEYOND_TRIP(
      "I-125",
      WARNING,
      "the style hours of trip '%1$s' add up to %2$s, far more than its %3$s hours",
      "used as they are"),
  TRIP_HOURS_BEYOND_DAYS(
      "I-126", WARNING, "%1$s hours are more than its days hold (Days: %2$s)", "used as they are"),
  STYLE_WITHOUT_WEIGHT(
      "I-127",
      WARNING,
      "style '%1$s' has pieces aboard without a Weight each",
      "counted as weighing 0, so weights are too low"),
  EVENT_PAST(
      "I-128", NOTE, "event '%1$s' of %2$s is before the date of analysis", "not planned for"),
  ITEM_WEIGHT_DOUBTFUL(
      "I-129", WARNING, "one piece of '%1$s' weighs %2$s; is the unit right?", "used as it is"),
  BOX_WEIGHT_DOUBTFUL(
      "I-130", WARNING, "box '%1$s' weighs %2$s empty; is the unit right?", "used as it is"),
  PERSON_WEIGHT_DOUBTFUL(
      "I-131", WARNING, "person '%1$s' weighs %2$s; is the unit right?", "used as it is"),
  POSITION_DOUBTFUL(
      "I-132",
      WARNING,
      "'%1$s' stands %2$s %3$s; is the unit right?",
      "used as it is, in centres and moments too; more than %4$s is implausible"),
  FLOORS_DIFFER(
      "I-133", NOTE, "%1$s has more than one Carry at least", "the largest, %2$s pieces, is used"),
  COUNT_OLD(
      "I-134",
      NOTE,
      "%1$s in '%2$s' was last counted on %3$s, more than a year ago; recount it",
      "used as it is"),
  PLATE_LINES_SWAPPED(
      "I-135",
      WARNING,
      "the plate's line for persons is larger than its line for persons, motor and gear;"
          + " are they swapped?",
      "used as they are"),
  NO_PERSON_LOADED(
      "I-136",
      NOTE,
      "the plate has a line for persons, but Loads lists no person",
      "persons count as 0; add them"),
  LOSS_WITHOUT_HOURS(
      "I-137",
      WARNING,
      "style '%1$s' was lost on trip '%2$s' but its style hours there are 0",
      "used as they are; correct the hours"),

  // Experience of others. Details: file, how many logs or which line, what is wrong
  EXPERIENCE_USED(
      "N-210",
      NOTE,
      "%1$s holds the experience of %2$s",
      "used as the starting point for your own log, which outweighs it as it grows; see"
          + " 'Rests on' in Loss rates"),
  EXPERIENCE_OF_NO_USE(
      "N-211",
      NOTE,
      "%1$s has no rates of other logs per hour %2$s, as yours are",
      "not used: rates come from your own log"),
  EXPERIENCE_LINE(
      "N-212",
      WARNING,
      "line %2$s of %1$s cannot be used: %3$s",
      "left out; the other lines were read"),
  EXPERIENCE_MORE_LINES("N-213", WARNING, "%2$s more lines of %1$s cannot be used", "left out"),
  EXPERIENCE_NOT_READ(
      "N-214",
      WARNING,
      "%1$s lies beside the workbook, but cannot be read: %2$s",
      "rates come from your own log"),

  // The loss model
  LOSS_FAR_OUT(
      "I-160",
      WARNING,
      "%1$s lost of '%2$s' in %3$s hours: is that right? By the rest of the log its chance"
          + " is below 1 in 10,000",
      "used as it is; correct the cell if it is a slip"),

  // Saving
  SHEET_NAME_TAKEN(
      "W-001",
      NOTE,
      "one of your sheets is called '%1$s', like a sheet that this program writes",
      "yours was not changed; the program's is called '%2$s'"),
  TICK_WITHOUT_LINE(
      "W-200",
      WARNING,
      "'%1$s' was typed for a line that is not on the list now (%2$s)",
      "not posted; if it was done, add it to your own sheets"),
  TICK_BESIDE_LINE(
      "W-201",
      Severity.WARNING,
      "'%1$s' was typed in a column of ours, but beside no line of the table",
      "not posted; type it again beside its line"),
  SIGNATURE_DROPPED(
      "W-002",
      WARNING,
      "the workbook was digitally signed, and a signature cannot outlast a change",
      "written without the signature, as requested; the earlier file, or its backup, still"
          + " has it");

  private final String id;
  private final About about;
  private final Severity severity;
  private final String message;
  private final String done;

  Code(String id, Severity severity, String message) {
    this(id, severity, message, "%3$s");
  }

  Code(String id, Severity severity, String message, String done) {
    this.id = id;
    this.about = About.ofId(id);
    this.severity = severity;
    this.message = message;
    this.done = done;
  }

  /** Stable id. */
  public String id() {
    return id;
  }

  /** Part of the program that it is about. */
  public About about() {
    return about;
  }

  /** Severity of its findings. */
  public Severity severity() {
    return severity;
  }

  /** Format of the fault. */
  String message() {
    return message;
  }

  /** Format of the consequence. */
  String done() {
    return done;
  }

  /** Subject of a finding, given by the first letter of its id. */
  public enum About {
    /** The angler's sheets. */
    INPUT('I'),
    /** Loss rates and forecasts. */
    RATES('N'),
    /** Items to carry, buy and pack. */
    SPARES('S'),
    /** Weights, the plate and places of boxes. */
    LOAD('L'),
    /** Sheets written into the workbook. */
    SHEETS('W');

    private final char letter;

    About(char letter) {
      this.letter = letter;
    }

    private static About ofId(String id) {
      return List.of(values()).stream()
          .filter(about -> about.letter == id.charAt(0))
          .findFirst()
          .orElseThrow(() -> new IllegalArgumentException("no such letter: " + id));
    }
  }
}
