package sparewell.finding;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import sparewell.declared.DeclaredTable;

/** Kinds of finding, as {@code codes.txt} declares them; details of a finding fill the texts. */
public enum Code {
  NOT_A_NUMBER,
  REQUIRED_BLANK,
  ERROR_VALUE,
  DAMAGED_CELL,
  NEGATIVE,
  NOT_WHOLE,
  NOT_POSITIVE,
  TOO_LARGE,
  UNKNOWN_UNIT,
  BOOLEAN_AS_NUMBER,
  DATE_AS_NUMBER,
  NOT_A_DATE,
  NOT_YES_NO,
  NOT_A_CHOICE,
  BAD_CHANCE,
  UNKNOWN_KEY,
  LEFT_OUT_KEY,
  AMBIGUOUS_DATE,
  DUPLICATE,
  TRIP_NAME_TAKEN,
  OUT_OF_RANGE,
  TRIP_WITHOUT_HOURS,
  DATE_AS_FRACTION,
  COMMA_NUMBER,
  PERCENT_CHANCE,
  WORD_BEHIND_COUNT,
  UNIT_IN_CELL,
  PART_OF_PIECE,
  ASSUMED_DATE,
  TIME_AS_HOURS,
  CONTROL_CHARACTERS,
  FORMULA_COMPUTED,
  FORMULA_BLANK,
  DATE_AS_NAME,
  CAUSE_AS_OTHER,
  DID_YOU_MEAN,
  HEADER_TWICE,
  HEADER_UNIT,
  SHEET_TWICE,
  SHEET_WITHOUT_HEADER,
  SHEET_NAME_NEAR,
  UNKNOWN_SETTING,
  SAME_DATE_TRIPS,
  CHANCE_OPTION_PERCENT,
  BLANK_PACK_SIZE,
  LABELS_WIDER_THAN_PAPER,
  AFTER_AS_OF,
  NO_ROWS,
  ITEM_NOT_IN_STOCK,
  ITEM_PARTLY_NAMED,
  ONLY_ITEM,
  TEST_INCOMPLETE,
  MORE_LIKE_THIS,
  SAME_PLACE_TWICE,
  TRANSFER_TO_ITSELF,
  BOX_LOG_SAYS_NOTHING,
  RECOUNT,
  CARRIED_TOO_MANY,
  COUNT_WITHOUT_DATE,
  PUT_BEFORE_COUNT,
  LOSS_WITHOUT_ITEM,
  RESTOCK_WITHOUT_ROW,
  COUNTED_IN_FUTURE,
  LOSS_WITHOUT_STYLE_HOURS,
  HOURS_UNREAD,
  LOSS_UNREAD,
  NO_STYLE_HOURS,
  NO_TRIPS_TO_FIT,
  RATES_NOT_SETTLED,
  LOSS_WITHOUT_SHARE,
  COVER_NEVER_LOGGED,
  PLAN_STYLE_NOT_IN_STOCK,
  PLAN_COLOUR_NOT_IN_STOCK,
  NEEDED_BUT_NOT_IN_STOCK,
  PRICE_NOT_KNOWN,
  EVENT_BOX_NOT_ENOUGH_SLOTS,
  EVENT_BOX_ASHORE,
  COMPARTMENT_OVER_LOAD,
  COMPARTMENT_OVER_VOLUME,
  SIDE_OVER_TOLERANCE,
  BOX_DOES_NOT_FIT,
  BOX_NOT_AT_HAND,
  BOX_FITS_NOWHERE,
  FIXED_BOX_AGAINST_LIMIT,
  FIXED_OVER_LIMIT,
  NO_STOW_PLAN,
  BOX_SIZE_UNKNOWN,
  COMPARTMENT_SIZE_UNKNOWN,
  NO_MAX_LOAD,
  BOX_WEIGHT_UNKNOWN,
  OVER_PLATE,
  OVER_PLATE_PERSONS,
  PLATE_NOT_CHECKED,
  SIDE_OVER_USUAL,
  PLATE_WITHOUT_LOADS,
  TEST_NOT_USABLE,
  STYLE_WITHOUT_STOCK,
  BOX_WITHOUT_STOCK,
  COMPARTMENT_EMPTY,
  BOX_CHECK_DUE,
  BOX_NEVER_CHECKED,
  STYLE_HOURS_BEYOND_TRIP,
  TRIP_HOURS_BEYOND_DAYS,
  STYLE_WITHOUT_WEIGHT,
  EVENT_PAST,
  ITEM_WEIGHT_DOUBTFUL,
  BOX_WEIGHT_DOUBTFUL,
  PERSON_WEIGHT_DOUBTFUL,
  POSITION_DOUBTFUL,
  FLOORS_DIFFER,
  GEAR_WITHOUT_FLOOR,
  COUNT_OLD,
  PLATE_LINES_SWAPPED,
  NO_PERSON_LOADED,
  LOSS_WITHOUT_HOURS,
  EXPERIENCE_USED,
  EXPERIENCE_OF_NO_USE,
  EXPERIENCE_LINE,
  EXPERIENCE_MORE_LINES,
  EXPERIENCE_NOT_READ,
  LOSS_FAR_OUT,
  SHEET_NAME_TAKEN,
  TICK_WITHOUT_LINE,
  TICK_BESIDE_LINE,
  SIGNATURE_DROPPED;

  private final String id;
  private final About about;
  private final Severity severity;
  private final String message;
  private final String done;
  private final String several;

  Code() {
    List<String> texts = Declared.TEXTS.get(name());
    id = texts.get(1);
    about = About.ofId(id);
    severity = Severity.valueOf(texts.get(2).toUpperCase(Locale.ROOT));
    message = texts.get(3);
    done = texts.get(4).isEmpty() ? "%3$s" : texts.get(4);
    several = texts.size() > 5 ? texts.get(5) : "";
  }

  /** The lines of the file by name; they must be there before the enum's own constants. */
  private static final class Declared {
    static final Map<String, List<String>> TEXTS = new HashMap<>();

    static {
      for (DeclaredTable table : DeclaredTable.read(Code.class, "codes.txt").values()) {
        TEXTS.putAll(table.byName());
      }
    }
  }

  public String id() {
    return id;
  }

  public About about() {
    return about;
  }

  public Severity severity() {
    return severity;
  }

  String message() {
    return message;
  }

  String done() {
    return done;
  }

  /** Words behind a number for several findings of the kind; may be empty. */
  public String several() {
    return several;
  }

  /** Subject of a finding, given by the first letter of its id. */
  public enum About {
    INPUT('I'),
    RATES('N'),
    SPARES('S'),
    LOAD('L'),
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
