package sparewell.render;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sparewell.declared.DeclaredTable;
import sparewell.ooxml.XmlText;

/** A piece of XML: its texts stand before, between and behind the places for values. */
record XmlPiece(List<String> texts, List<Place> places, int values) {
  private static final Pattern PLACE = Pattern.compile("\\{(\\{?)([^{}]+)\\}?\\}");

  /** A place for a value, numbered from 0; {@code xml} where it goes in as it is. */
  private record Place(int value, boolean xml) {}

  static XmlPiece of(DeclaredTable lines) {
    StringBuilder whole = new StringBuilder();
    for (List<String> line : lines.rows()) {
      String text = line.get(0).strip();
      boolean inTag = whole.length() > 0 && !text.startsWith("<") && !text.startsWith("{{");
      whole.append(inTag ? " " : "").append(text);
    }
    List<String> texts = new ArrayList<>();
    List<Place> places = new ArrayList<>();
    List<String> names = new ArrayList<>();
    Matcher place = PLACE.matcher(whole);
    int from = 0;
    while (place.find()) {
      MatchResult found = place.toMatchResult();
      if (!names.contains(found.group(2))) {
        names.add(found.group(2));
      }
      texts.add(whole.substring(from, found.start()));
      places.add(new Place(names.indexOf(found.group(2)), !found.group(1).isEmpty()));
      from = found.end();
    }
    texts.add(whole.substring(from));
    return new XmlPiece(List.copyOf(texts), List.copyOf(places), names.size());
  }

  void fill(StringBuilder out, Object... given) {
    if (given.length != values) {
      throw new IllegalArgumentException(given.length + " values for " + values + ": " + texts);
    }
    for (int i = 0; i < places.size(); i++) {
      out.append(texts.get(i));
      Object value = given[places.get(i).value()];
      if (places.get(i).xml()) {
        out.append(value);
      } else {
        XmlText.escape(value instanceof Boolean yes ? yes ? "1" : "0" : value.toString(), out);
      }
    }
    out.append(texts.get(places.size()));
  }
}
