package sparewell.save;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import sparewell.ooxml.WorkbookPackage;

/** The texts of our scratch workbook, each as the inside of its element: plain or rich text. */
final class OwnStrings {
  private OwnStrings() {}

  static List<String> of(WorkbookPackage scratch) throws IOException {
    List<String> strings = new ArrayList<>();
    if (scratch.sharedStringsPart().isEmpty()) {
      return strings;
    }
    try (InputStream part = scratch.part(scratch.sharedStringsPart().get())) {
      Markup in = new Markup(new InputStreamReader(part, StandardCharsets.UTF_8));
      while (in.next(Writer.nullWriter())) {
        if (in.opens("si")) {
          StringWriter inside = new StringWriter();
          boolean more = !in.mentions("/>");
          while (more && in.next(inside) && !in.mentions("</si>")) {
            inside.append(in.tag());
          }
          strings.add(inside.toString());
        }
      }
    }
    return strings;
  }
}
