package sparewell.ooxml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Files made to harm: bombs, tricks with names and entities. */
class HostileFilesTest extends RefusedFileFixture {
  @Test
  void aBombInOnePart() throws Exception {
    Map<String, byte[]> parts = parts();
    parts.put("xl/media/image1.png", new byte[60 << 20]);
    refused(Zips.write(parts), "far more than its packed size");
  }

  @Test
  void aBombOfManyParts() throws Exception {
    Map<String, byte[]> parts = parts();
    parts.put("xl/media/image.png", new byte[30 << 20]);
    ByteArrayOutputStream bomb = new ByteArrayOutputStream();
    try (ZipFile packed = ZipFile.builder().setByteArray(Zips.write(parts)).get();
        ZipArchiveOutputStream out = new ZipArchiveOutputStream(bomb)) {
      packed.copyRawEntries(out, entry -> true);
      ZipArchiveEntry image = packed.getEntry("xl/media/image.png");
      for (int i = 0; i < 22; i++) {
        ZipArchiveEntry copy = new ZipArchiveEntry("xl/media/image" + i + ".png");
        copy.setMethod(image.getMethod());
        copy.setSize(image.getSize());
        copy.setCompressedSize(image.getCompressedSize());
        copy.setCrc(image.getCrc());
        out.addRawArchiveEntry(copy, packed.getRawInputStream(image));
      }
    }
    refused(bomb.toByteArray(), "unpacks to more than");
  }

  @Test
  void aBombOfOverlappingParts() throws Exception {
    Map<String, byte[]> two = parts();
    two.put("xl/media/a.png", new byte[5000]);
    two.put("xl/media/b.png", new byte[5000]);
    byte[] zip = Zips.write(two);
    int first = centralHeader(zip, "xl/media/a.png");
    int second = centralHeader(zip, "xl/media/b.png");
    ByteBuffer bytes = ByteBuffer.wrap(zip).order(ByteOrder.LITTLE_ENDIAN);
    bytes.putInt(second + 42, bytes.getInt(first + 42)); // offset of the local header
    refused(zip, "overlap");
  }

  @Test
  void partsThatAreLockedOrPackedStrangely() throws Exception {
    byte[] locked = Zips.ordinary("Stock");
    locked[centralHeader(locked, SHEET) + 8] |= 1; // general purpose flag: encrypted
    refused(locked, "password");
    byte[] strange = Zips.ordinary("Stock");
    strange[centralHeader(strange, SHEET) + 10] = 12; // method: bzip2
    refused(strange, "packed in a way");
  }

  private static int centralHeader(byte[] zip, String name) {
    String text = new String(zip, StandardCharsets.ISO_8859_1);
    return text.lastIndexOf(name) - 46;
  }

  @Test
  void manyParts() throws Exception {
    Map<String, byte[]> parts = parts();
    for (int i = 0; i < 10_000; i++) {
      parts.put("xl/media/" + i, new byte[0]);
    }
    refused(Zips.write(parts), "far more than a workbook has");
  }

  @ParameterizedTest
  @ValueSource(strings = {"../../evil.sh", "xl/../../x", "C:\\evil", "..\\x", "//host/x", "a\nb"})
  void pathTricks(String name) throws Exception {
    Map<String, byte[]> parts = parts();
    parts.put(name, new byte[1]);
    refused(Zips.write(parts), "leads out of the file");
  }

  @ParameterizedTest
  @ValueSource(strings = {"XL/Workbook.xml", "xl\\workbook.xml", "/xl/workbook.xml"})
  void oneNameTwice(String other) throws Exception {
    Map<String, byte[]> parts = parts();
    parts.put(other, parts.get(BOOK));
    refused(Zips.write(parts), "twice");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        BOOK + "|<!DOCTYPE a [<!ENTITY x \"xx\"><!ENTITY y \"&x;&x;\">]>",
        BOOK + "|<!DOCTYPE a SYSTEM \"file:///etc/passwd\">",
        "[Content_Types].xml|<!DOCTYPE a SYSTEM \"http://example.com/x.dtd\">",
        "_rels/.rels|<!DOCTYPE a [<!ENTITY % p SYSTEM \"file:///etc/hosts\"> %p;]>",
      })
  void entityTricksInThePackage(String part, String doctype) throws Exception {
    Map<String, byte[]> parts = parts();
    parts.put(
        part,
        Zips.utf8(Zips.text(parts, part).replaceFirst("(<\\?xml.*?\\?>)?\\s*", "$1" + doctype)));
    refused(Zips.write(parts), part + " inside it is damaged");
  }

  @Test
  void entityTricksInASheetStopItsReader() throws Exception {
    String xml =
        "<!DOCTYPE a [<!ENTITY x SYSTEM \"file:///etc/passwd\">]><worksheet><v>&x;</v></worksheet>";
    XMLStreamReader reader = SafeXml.reader(new ByteArrayInputStream(Zips.utf8(xml)));
    assertThrows(
        XMLStreamException.class,
        () -> {
          while (reader.hasNext()) {
            reader.next();
          }
        });
  }

  @Test
  void formattedBlankRowsAreNoBomb() throws Exception {
    Path file = folder.resolve("large.xlsx");
    Map<String, byte[]> parts = parts();
    byte[] sheet = parts.remove(SHEET);
    try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(file))) {
      for (Map.Entry<String, byte[]> part : parts.entrySet()) {
        out.putNextEntry(new ZipEntry(part.getKey()));
        out.write(part.getValue());
      }
      out.putNextEntry(new ZipEntry(SHEET));
      String text = new String(sheet, StandardCharsets.UTF_8);
      int end = text.indexOf("</sheetData>");
      out.write(Zips.utf8(text.substring(0, end)));
      StringBuilder rows = new StringBuilder();
      for (int r = 2; r <= 230_000; r++) {
        rows.append("<row r=\"" + r + "\" s=\"0\" customFormat=\"1\">");
        for (char c = 'A'; c <= 'F'; c++) {
          rows.append("<c r=\"").append(c).append(r).append("\" s=\"0\"/>");
        }
        rows.append("</row>");
        if (r % 1000 == 0) {
          out.write(Zips.utf8(rows.toString()));
          rows.setLength(0);
        }
      }
      out.write(Zips.utf8(text.substring(end)));
    }
    try (WorkbookPackage book = WorkbookPackage.open(file);
        InputStream in = book.part(book.sheets().get(0).partName().orElseThrow())) {
      long bytes = in.transferTo(OutputStream.nullOutputStream());
      assertTrue(bytes > 35 << 20, "as large as it was meant to be: " + bytes);
      assertEquals(2, book.sheets().size());
    }
  }
}
