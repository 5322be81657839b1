package sparewell.ooxml;

/**
 * A relationship of a part.
 *
 * @param type its kind, a URI
 * @param part the part it leads to; empty where it leads outside the package
 */
public record Relationship(String id, String type, String part) {
  /** Returns whether it leads outside; such targets are never followed. */
  public boolean external() {
    return part.isEmpty();
  }

  /** Returns whether its kind's URI ends so, in the ordinary or the strict form. */
  public boolean is(String kind) {
    return type.endsWith("/" + kind);
  }
}
