package sparewell.finding;

/**
 * Every kind of finding: its id, how much it matters, what is wrong and what was done. The details
 * of a finding fill both texts ({@code %1$s} is the first detail). Append only: people look for the
 * ids.
 */
public enum Code {
  // Reading the workbook
  NOT_A_NUMBER(
      "I-001",
      Severity.ERROR,
      "'%1$s' in %2$s is not a number; write it like 12.5",
      "row left out"),

  // Load and stowing
  COMPARTMENT_OVER_LOAD(
      "L-001",
      Severity.ERROR,
      "%1$s holds %2$s now, %3$s over its max load of %4$s",
      "the stow plan keeps to the limit where it can"),
  COMPARTMENT_OVER_VOLUME(
      "L-002",
      Severity.ERROR,
      "the boxes in %1$s take %2$s, %3$s over its usable volume of %4$s",
      "the stow plan keeps to the limit where it can"),
  SIDE_OVER_TOLERANCE(
      "L-003",
      Severity.ERROR,
      "the tackle pulls to %1$s with %2$s, over the side tolerance of %3$s",
      "the stow plan keeps to the limit where it can"),
  BOX_DOES_NOT_FIT(
      "L-004",
      Severity.ERROR,
      "%1$s does not fit into %2$s in any orientation",
      "the stow plan looks for another compartment"),
  BOX_NOT_AT_HAND(
      "L-005",
      Severity.ERROR,
      "%1$s should be at hand but stands in %2$s, which is not",
      "the stow plan looks for another compartment"),
  BOX_FITS_NOWHERE(
      "L-006",
      Severity.ERROR,
      "%1$s fits into no compartment aboard%2$s",
      "it counts where it stands, the rest is planned around it; check its size or take it ashore"),
  FIXED_BOX_AGAINST_LIMIT(
      "L-007",
      Severity.ERROR,
      "%1$s stays put in %2$s although %3$s",
      "it counts where it stands; clear 'Stays put' to let the plan move it"),
  FIXED_OVER_LIMIT(
      "L-008",
      Severity.ERROR,
      "what cannot be moved in %1$s is already %2$s over its %3$s",
      "no other box is planned into it; take something out"),
  NO_STOW_PLAN(
      "L-009",
      Severity.ERROR,
      "%1$s: in the closest plan %2$s%3$s",
      "boxes are left where they are; take something ashore or ease a limit"),
  BOX_SIZE_UNKNOWN(
      "L-010",
      Severity.NOTE,
      "%1$s has no size",
      "not checked for fit, and its volume is not counted; measure length, width and height"),
  COMPARTMENT_SIZE_UNKNOWN(
      "L-011",
      Severity.NOTE,
      "%1$s has no size",
      "fit and volume are not checked there; measure length, width and height"),
  NO_MAX_LOAD("L-012", Severity.NOTE, "%1$s has no max load", "the weight in it is not checked"),
  BOX_WEIGHT_UNKNOWN(
      "L-013",
      Severity.WARNING,
      "the weight of %1$s is not fully known: %2$s",
      "counted as at least %3$s; weigh it, full, for a better plan"),
  LOOSE_WEIGHT_UNKNOWN(
      "L-014",
      Severity.WARNING,
      "%2$d pieces lying loose in %1$s have no known weight",
      "counted as weighing nothing: totals are 'at least'; give a weight each"),
  OVER_PLATE(
      "L-015",
      Severity.ERROR,
      "the load is%1$s %2$s, %3$s OVER the capacity plate's %4$s",
      "take weight out before going afloat; the plate and the maker's manual are the limit"),
  OVER_PLATE_PERSONS(
      "L-016",
      Severity.ERROR,
      "the persons weigh %1$s, %2$s OVER the capacity plate's %3$s for persons",
      "fewer persons aboard; the plate and the maker's manual are the limit"),
  PLATE_NOT_CHECKED(
      "L-017",
      Severity.NOTE,
      "no %1$s is given",
      "not checked; read it off the boat's capacity plate or the maker's manual"),
  PLATE_WITHOUT_LOADS(
      "L-018",
      Severity.WARNING,
      "the load is compared with the plate but no %1$s is listed in Loads",
      "the margin is too rosy; list persons, motor, batteries and fuel"),
  TEST_NOT_USABLE(
      "L-019",
      Severity.WARNING,
      "the %1$s test cannot be used: %2$s",
      "no figure is given; repeat the test with a heavier weight or a longer way"),

  // Spares, buying and the event box
  PLAN_STYLE_NOT_IN_STOCK(
      "S-001",
      Severity.WARNING,
      "'%1$s' is in the plan of %2$s, but no row of Stock has it",
      "nothing planned for it; add a Stock row, with Count 0 if you have none"),
  PLAN_COLOUR_NOT_IN_STOCK(
      "S-002",
      Severity.WARNING,
      "colour '%1$s' of '%2$s' is in the plan of %3$s, but no row of Stock has it",
      "%4$s; add a Stock row, with Count 0 if you have none"),
  NEEDED_BUT_NOT_IN_STOCK(
      "S-003",
      Severity.WARNING,
      "'%1$s' needs %2$d at once, but no row of Stock has it",
      "left out of the spares; add a Stock row, with Count 0 if you have none"),
  PRICE_NOT_KNOWN(
      "S-004",
      Severity.NOTE,
      "'%1$s' is to be bought, but its pack price is not known",
      "listed after the priced lines, outside the budget; fill in Pack price"),
  EVENT_BOX_NOT_ENOUGH_SLOTS(
      "S-005",
      Severity.NOTE,
      "%1$s wants %2$d pockets, but its box has %3$d",
      "the pockets went where they save most; the rest is shown as short"),

  // Loss rates
  LOSS_WITHOUT_STYLE_HOURS(
      "N-001",
      Severity.WARNING,
      "%1$s was lost on trip %2$s, but the Style hours of that trip leave it out",
      "counted as thrown for %3$s hours, its usual share of the trip; add the hours to be exact"),
  NO_STYLE_HOURS(
      "N-002",
      Severity.NOTE,
      "no trip has Style hours",
      "loss rates are per hour afloat, for every style alike; log Style hours to tell styles apart"),
  NO_TRIPS_TO_FIT(
      "N-003",
      Severity.NOTE,
      "no trip with hours is logged",
      "loss rates are a guess made for any angler until the first trip is logged"),
  RATES_NOT_SETTLED(
      "N-004",
      Severity.WARNING,
      "the loss rates did not settle on one best fit",
      "rates and chances are averaged over a wide range of fits and are less certain than shown"),
  LOSS_ITEM_UNKNOWN(
      "N-005",
      Severity.NOTE,
      "the loss of %1$s on trip %2$s names no item in stock",
      "counted for the style, and shared among its items as they share the other losses"),
  LOSS_WITHOUT_SHARE(
      "N-006",
      Severity.WARNING,
      "%1$s was lost on trip %2$s, but no trip with Style hours ever has it",
      "counted as thrown for %3$s hours, the share of an average style"),
  COVER_NEVER_LOGGED(
      "N-007",
      Severity.NOTE,
      "no trip was logged in the cover '%1$s' of event %2$s",
      "losses are foreseen as in the usual mix of cover, with more uncertainty");

  private final String id;
  private final Severity severity;
  private final String message;
  private final String done;

  Code(String id, Severity severity, String message, String done) {
    this.id = id;
    this.severity = severity;
    this.message = message;
    this.done = done;
  }

  /** Stable id. */
  public String id() {
    return id;
  }

  /** How much it matters. */
  public Severity severity() {
    return severity;
  }

  /** Text of what is wrong. */
  String message() {
    return message;
  }

  /** Text of what was done. */
  String done() {
    return done;
  }
}
