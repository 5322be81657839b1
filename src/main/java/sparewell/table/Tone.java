package sparewell.table;

/** State of health of a value; always told in words too, colour comes second. */
public enum Tone {
  NONE,
  GOOD,
  WATCH,
  BAD
}
