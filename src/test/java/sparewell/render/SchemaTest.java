package sparewell.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.junit.jupiter.api.Test;
import org.xml.sax.SAXException;
import sparewell.units.UnitSystem;

/** The parts against the schemas of ECMA-376 part 4 (transitional), which the build unpacks. */
class SchemaTest {
  private static final Path SCHEMAS =
      Path.of("target", "schemas", "org", "apache", "poi", "schemas", "ooxml", "src");

  /** The schema leaves this attribute out, though the standard's text allows it on text. */
  private static final String KEPT_BLANKS = " xml:space=\"preserve\"";

  private static Schema schema(String file) throws SAXException {
    return SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI)
        .newSchema(SCHEMAS.resolve(file).toFile());
  }

  @Test
  void everyPartIsValid() throws SAXException, IOException {
    Map<String, Schema> schemas =
        Map.of(
            "xl/charts/", schema("dml-chart.xsd"),
            "xl/drawings/", schema("dml-spreadsheetDrawing.xsd"),
            "xl/", schema("sml.xsd"));
    byte[] book = Rendered.workbook(Sample.sheets(), UnitSystem.US, Sample.options());
    List<String> faults = new ArrayList<>();
    int seen = 0;
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(book))) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        String name = entry.getName();
        if (!name.startsWith("xl/") || !name.endsWith(".xml")) {
          continue;
        }
        String folder =
            name.startsWith("xl/charts/") || name.startsWith("xl/drawings/")
                ? name.substring(0, name.lastIndexOf('/') + 1)
                : "xl/";
        String text = new String(zip.readAllBytes(), StandardCharsets.UTF_8);
        seen++;
        try {
          schemas
              .get(folder)
              .newValidator()
              .validate(new StreamSource(new StringReader(text.replace(KEPT_BLANKS, ""))));
        } catch (SAXException fault) {
          faults.add(name + ": " + fault.getMessage());
        }
      }
    }
    assertEquals(List.of(), faults);
    assertTrue(seen > 15, "parts seen: " + seen);
  }
}
