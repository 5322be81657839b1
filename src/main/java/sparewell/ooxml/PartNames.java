package sparewell.ooxml;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Locale;

/**
 * Names of parts: no leading slash, forward slashes.
 *
 * @see "ECMA-376 part 2, section 6.2 (part names) and 6.5 (relationships)"
 */
public final class PartNames {
  private PartNames() {}

  /** The key under which two names of the same part are equal: names ignore case. */
  public static String key(String name) {
    String plain = name.replace('\\', '/');
    return (plain.startsWith("/") ? plain.substring(1) : plain).toLowerCase(Locale.ROOT);
  }

  /** Part with the relationships of a part; an empty name stands for the package. */
  public static String relationshipsOf(String part) {
    int slash = part.lastIndexOf('/');
    return part.substring(0, slash + 1) + "_rels/" + part.substring(slash + 1) + ".rels";
  }

  public static boolean isRelationships(String part) {
    String name = key(part);
    return name.endsWith(".rels") && (name.startsWith("_rels/") || name.contains("/_rels/"));
  }

  /** Part whose relationships a part holds; empty for those of the package. */
  public static String sourceOf(String relationshipsPart) {
    int folder = relationshipsPart.lastIndexOf("_rels/");
    String file = relationshipsPart.substring(folder + "_rels/".length());
    return relationshipsPart.substring(0, folder)
        + file.substring(0, file.length() - ".rels".length());
  }

  /** A relationship's target as a part name, seen from the part that has the relationship. */
  public static String resolve(String sourcePart, String target) {
    int fragment = target.indexOf('#');
    String path = (fragment >= 0 ? target.substring(0, fragment) : target).replace('\\', '/');
    int slash = sourcePart.lastIndexOf('/');
    String whole = path.startsWith("/") ? path : sourcePart.substring(0, slash + 1) + path;
    Deque<String> segments = new ArrayDeque<>();
    for (String segment : whole.split("/")) {
      if (segment.equals("..")) {
        segments.pollLast();
      } else if (!segment.isEmpty() && !segment.equals(".")) {
        segments.addLast(segment);
      }
    }
    return String.join("/", segments);
  }

  /** Absolute target for a part name, valid from any part. */
  public static String absolute(String part) {
    return "/" + part;
  }

  static boolean isTrick(String entryName) {
    String plain = entryName.replace('\\', '/');
    return plain.isEmpty()
        || List.of(plain.split("/")).contains("..")
        || plain.startsWith("//")
        || plain.matches("(?s)^[A-Za-z]:.*")
        || plain.chars().anyMatch(c -> c < ' ');
  }
}
