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
