package sparewell.ooxml;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import javax.xml.stream.XMLStreamException;

/** Content types of the parts. */
final class ContentTypes {
  static final String PART = "[Content_Types].xml";

  private final Map<String, String> byPart = new TreeMap<>();
  private final Map<String, String> byExtension = new TreeMap<>();

  private ContentTypes() {}

  static ContentTypes of(XmlText xml) throws XMLStreamException {
    if (!xml.root().name().equals("Types")) {
      throw new XMLStreamException("no content types");
    }
    ContentTypes types = new ContentTypes();
    for (XmlElement e : xml.root().children()) {
      String type = e.value("ContentType").orElse("");
      e.value("PartName").ifPresent(n -> types.byPart.put(PartNames.key(n), type));
      e.value("Extension").ifPresent(x -> types.byExtension.put(PartNames.key(x), type));
    }
    return types;
  }

  Optional<String> of(String part) {
    String key = PartNames.key(part);
    String byName = byPart.get(key);
    return Optional.ofNullable(
        byName != null ? byName : byExtension.get(key.substring(key.lastIndexOf('.') + 1)));
  }
}
