package sparewell.save;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sparewell.ooxml.Zips;

/** Random damage to a good workbook: to its bytes, to its parts, or to its cells. */
final class Damage {
  private static final List<String> VALUES =
      List.of(
          "",
          "NaN",
          "1e999",
          "-1e308",
          "-1",
          "0",
          "99999999999999999999",
          "1.5",
          "#REF!",
          "x",
          "=1+1",
          "3/8",
          "2026-13-45",
          "\u0000",
          "&#0;",
          "&#xFFFF;",
          "_x0000_",
          "\ud83d\udc1f",
          "yes",
          "2958466",
          "-0",
          "1E",
          "\t",
          "<b/>",
          "&unknown;");
  private static final List<String> TYPES =
      List.of("s", "n", "b", "e", "d", "str", "inlineStr", "?");
  private static final Pattern CELL = Pattern.compile("<c ([^>]*?)(/>|>.*?</c>)", Pattern.DOTALL);
  private static final Pattern ATTRIBUTE = Pattern.compile(" ([A-Za-z:]+)=\"([^\"]*)\"");
  private static final Pattern ELEMENT = Pattern.compile("<[A-Za-z][^<>]*>");

  private final Random random;

  Damage(long seed) {
    this.random = new Random(seed);
  }

  byte[] of(byte[] good) {
    int kind = random.nextInt(10);
    if (kind < 2) {
      return bytes(good);
    }
    Map<String, byte[]> parts = new LinkedHashMap<>(Zips.read(good));
    int times = 1 + random.nextInt(4);
    for (int i = 0; i < times; i++) {
      if (kind < 5) {
        part(parts);
      } else {
        cells(parts);
      }
    }
    return Zips.write(parts);
  }

  private byte[] bytes(byte[] good) {
    byte[] damaged = good.clone();
    int at = random.nextInt(damaged.length);
    switch (random.nextInt(5)) {
      case 0 -> damaged = Arrays.copyOf(damaged, at);
      case 1 -> Arrays.fill(damaged, at, Math.min(damaged.length, at + 200), (byte) 0);
      case 2 -> System.arraycopy(good, 0, damaged, at, Math.min(100, damaged.length - at));
      default -> {
        boolean directory = random.nextBoolean(); // the directory at the end is where it hurts
        for (int i = 0; i <= random.nextInt(8); i++) {
          int from = directory ? Math.max(0, damaged.length - 3000) : 0;
          damaged[from + random.nextInt(damaged.length - from)] = (byte) random.nextInt(256);
        }
      }
    }
    return damaged;
  }

  private void part(Map<String, byte[]> parts) {
    List<String> names = new ArrayList<>(parts.keySet());
    List<String> important =
        names.stream()
            .filter(n -> n.matches(".*(workbook|styles|Types|rels|Strings|table).*"))
            .toList();
    String name = random.nextBoolean() && !important.isEmpty() ? pick(important) : pick(names);
    String text = new String(parts.get(name), StandardCharsets.ISO_8859_1);
    String other = pick(names);
    String damaged =
        switch (random.nextInt(12)) {
          case 0 -> null;
          case 1 -> "";
          case 2 -> cut(text);
          case 3 -> insert(text, pick(VALUES));
          case 4 -> insert(text, "<!DOCTYPE a [<!ENTITY b SYSTEM \"file:///etc/passwd\">]>");
          case 5 -> attribute(text, pick(VALUES));
          case 6 -> attribute(text, String.valueOf(random.nextInt(100_000) - 10));
          case 7 -> element(text, "");
          case 8 -> element(text, "$0$0");
          case 9 -> new String(parts.get(other), StandardCharsets.ISO_8859_1);
          case 10 -> "\ufeff" + text;
          default -> attribute(text, "/" + other);
        };
    if (damaged == null) {
      parts.remove(name);
    } else {
      parts.put(name, damaged.getBytes(StandardCharsets.ISO_8859_1));
    }
  }

  private void cells(Map<String, byte[]> parts) {
    List<String> sheets =
        parts.keySet().stream()
            .filter(n -> n.contains("/sheet"))
            .filter(n -> n.endsWith(".xml"))
            .toList();
    if (sheets.isEmpty()) {
      part(parts);
      return;
    }
    String name = pick(sheets);
    String text = Zips.text(parts, name);
    List<int[]> cells = new ArrayList<>();
    Matcher cell = CELL.matcher(text);
    while (cell.find()) {
      cells.add(new int[] {cell.start(), cell.end()});
    }
    if (cells.isEmpty()) {
      return;
    }
    int[] at = cells.get(random.nextInt(cells.size()));
    String old = text.substring(at[0], at[1]);
    String reference = old.replaceAll("(?s).*?\\br=\"([^\"]*)\".*", "$1");
    String value = pick(VALUES);
    String changed =
        switch (random.nextInt(7)) {
          case 0 -> "";
          case 1 -> old + old;
          case 2 -> "<c r=\"XFD9999999\"><v>1</v></c>" + old;
          case 3 -> "<c r=\"" + reference + "\"><f>" + value + "/0</f></c>";
          case 4 -> "<c r=\"" + reference + "\" t=\"inlineStr\"><is><t>" + value + "</t></is></c>";
          case 5 ->
              "<c r=\""
                  + reference
                  + "\" s=\""
                  + random.nextInt(500)
                  + "\"><v>"
                  + value
                  + "</v></c>";
          default ->
              "<c r=\"" + reference + "\" t=\"" + pick(TYPES) + "\"><v>" + value + "</v></c>";
        };
    parts.put(name, Zips.utf8(text.substring(0, at[0]) + changed + text.substring(at[1])));
  }

  private String cut(String text) {
    if (text.isEmpty()) {
      return text;
    }
    int from = random.nextInt(text.length());
    int to = Math.min(text.length(), from + 1 + random.nextInt(60));
    return text.substring(0, from) + text.substring(to);
  }

  private String insert(String text, String what) {
    int at = text.isEmpty() ? 0 : random.nextInt(text.length());
    return text.substring(0, at) + what + text.substring(at);
  }

  private String attribute(String text, String value) {
    return replaceOne(text, ATTRIBUTE, " $1=\"" + Matcher.quoteReplacement(value) + "\"");
  }

  private String element(String text, String replacement) {
    return replaceOne(text, ELEMENT, replacement);
  }

  private String replaceOne(String text, Pattern pattern, String replacement) {
    long count = pattern.matcher(text).results().count();
    if (count == 0) {
      return text;
    }
    long wanted = random.nextInt((int) count);
    Matcher matcher = pattern.matcher(text);
    StringBuilder out = new StringBuilder();
    for (long i = 0; matcher.find(); i++) {
      if (i == wanted) {
        matcher.appendReplacement(out, replacement);
        break;
      }
    }
    return matcher.appendTail(out).toString();
  }

  private <T> T pick(List<T> from) {
    return from.get(random.nextInt(from.size()));
  }
}
