package sparewell.sheet;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Short codes for the colours of a workbook.
 *
 * <p>Our own rule: the first letters of a colour's words (of a single word, its first two letters),
 * capitals, three at most; where two colours would share a code, the later in the alphabet takes
 * one more letter of its last word, and where letters run out a number. So one code stands for one
 * colour on every label, and the same colours give the same codes.
 */
final class ColourCodes {
  private ColourCodes() {}

  /** Colour → code, in alphabetical order of the colours. */
  static Map<String, String> of(Collection<String> colours) {
    Map<String, String> codes = new LinkedHashMap<>();
    Set<String> taken = new LinkedHashSet<>();
    for (String colour : new TreeSet<>(colours)) {
      String code = firstFree(colour, taken);
      taken.add(code);
      codes.put(colour, code);
    }
    return codes;
  }

  private static String firstFree(String colour, Set<String> taken) {
    List<String> words =
        List.of(colour.strip().toUpperCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+")).stream()
            .filter(word -> !word.isEmpty())
            .limit(3)
            .toList();
    if (words.isEmpty()) {
      words = List.of("X");
    }
    StringBuilder start = new StringBuilder();
    for (String word : words.subList(0, words.size() - 1)) {
      start.append(word.charAt(0));
    }
    String last = words.get(words.size() - 1);
    for (int letters = words.size() == 1 ? 2 : 1; letters <= last.length(); letters++) {
      String code = start + last.substring(0, letters);
      if (!taken.contains(code)) {
        return code;
      }
    }
    String base = start + last.substring(0, 1);
    int number = 2;
    while (taken.contains(base + number)) {
      number++;
    }
    return taken.contains(base) ? base + number : base;
  }
}
