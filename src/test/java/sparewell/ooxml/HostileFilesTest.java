package sparewell.ooxml;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.EncryptionMode;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Files that must be refused, each with a message that says what it is and what to do. */
class HostileFilesTest {
  private static final String BOOK = "xl/workbook.xml";
  private static final String SHEET = "xl/worksheets/sheet1.xml";

  @TempDir private Path folder;

  private Map<String, byte[]> parts() {
    return new LinkedHashMap<>(Zips.read(Zips.ordinary("Stock", "Trips")));
  }

  private void refused(byte[] content, String because) throws Exception {
    Path file = Files.write(folder.resolve("season.xlsx"), content);
    WorkbookRefused refused =
        assertThrows(WorkbookRefused.class, () -> WorkbookPackage.open(file).close());
    assertTrue(refused.problem().contains(because), refused.getMessage());
    assertTrue(refused.getMessage().contains("season.xlsx"), refused.getMessage());
    assertTrue(refused.getMessage().length() > refused.problem().length() + 40, "says what to do");
    assertFalse(refused.getMessage().contains("Exception"), refused.getMessage());
    assertArrayEquals(content, Files.readAllBytes(file));
  }

  @Test
  void lockedWithAPassword() throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (POIFSFileSystem system = new POIFSFileSystem()) {
      var encryptor = new EncryptionInfo(EncryptionMode.agile).getEncryptor();
      encryptor.confirmPassword("secret");
      try (OutputStream into = encryptor.getDataStream(system)) {
        into.write(Zips.ordinary("Stock"));
      }
      system.writeFilesystem(out);
    }
    refused(out.toByteArray(), "password");
  }

  @Test
  void oldXlsUnderANewName() throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (HSSFWorkbook book = new HSSFWorkbook()) {
      book.createSheet("Stock");
      book.write(out);
    }
    refused(out.toByteArray(), ".xls");
  }

  @Test
  void openDocumentUnderAnotherName() throws Exception {
    Map<String, byte[]> ods = new LinkedHashMap<>();
    ods.put("mimetype", Zips.utf8("application/vnd.oasis.opendocument.spreadsheet"));
    ods.put("content.xml", Zips.utf8("<a/>"));
    refused(Zips.write(ods), ".ods");
  }

  @Test
  void otherKindsOfFiles() throws Exception {
    refused(new byte[0], "empty");
    refused(Zips.utf8("<html><body>a table</body></html>"), "web page");
    refused(Zips.utf8("Style;Count\njig;3\n"), "plain text");
    refused(new byte[] {1, 2, 0, 0, 7, 7, 0}, "not a workbook");
    refused(Zips.write(Map.of("photo.jpg", new byte[10])), "no workbook inside");
    Map<String, byte[]> document = new LinkedHashMap<>();
    document.put("[Content_Types].xml", Zips.utf8("<Types/>"));
    document.put("word/document.xml", Zips.utf8("<d/>"));
    refused(Zips.write(document), "text document");
    document.put("xl/workbook.bin", new byte[1]);
    refused(Zips.write(document), ".xlsb");
    Map<String, byte[]> template = parts();
    Zips.edit(template, "[Content_Types].xml", "sheet.main+xml", "template.main+xml");
    refused(Zips.write(template), "template");
  }

  @Test
  void noFileAndAFolder() {
    assertTrue(
        assertThrows(WorkbookRefused.class, () -> WorkbookPackage.open(folder.resolve("no.xlsx")))
            .problem()
            .contains("no such file"));
    assertTrue(
        assertThrows(WorkbookRefused.class, () -> WorkbookPackage.open(folder))
            .problem()
            .contains("folder"));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.01, 0.3, 0.6, 0.9, 0.999})
  void cutShort(double share) throws Exception {
    byte[] whole = Zips.ordinary("Stock");
    refused(Arrays.copyOf(whole, (int) (whole.length * share)), "cut short or damaged");
  }

  @Test
  void aByteChangedInsideAPart() throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(bytes)) {
      out.setMethod(ZipOutputStream.STORED);
      for (Map.Entry<String, byte[]> part : parts().entrySet()) {
        ZipEntry entry = new ZipEntry(part.getKey());
        entry.setSize(part.getValue().length);
        java.util.zip.CRC32 crc = new java.util.zip.CRC32();
        crc.update(part.getValue());
        entry.setCrc(crc.getValue());
        out.putNextEntry(entry);
        out.write(part.getValue());
      }
    }
    byte[] zip = bytes.toByteArray();
    int at = new String(zip, java.nio.charset.StandardCharsets.ISO_8859_1).indexOf("<sheetData>");
    zip[at + 5] ^= 1;
    refused(zip, "is damaged");
  }

  @Test
  void aBombInOnePart() throws Exception {
    Map<String, byte[]> parts = parts();
    parts.put("xl/media/image1.png", new byte[60 << 20]);
    refused(Zips.write(parts), "far more than its packed size");
  }

  @Test
  void aBombOfManyParts() throws Exception {
    Map<String, byte[]> parts = parts();
    byte[] block = new byte[30 << 20];
    for (int i = 0; i < 23; i++) {
      parts.put("xl/media/image" + i + ".png", block);
    }
    refused(Zips.write(parts), "unpacks to more than");
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
    String text = new String(zip, java.nio.charset.StandardCharsets.ISO_8859_1);
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
  void strictWorkbook() throws Exception {
    Map<String, byte[]> parts = parts();
    Zips.edit(
        parts,
        BOOK,
        "http://schemas.openxmlformats.org/spreadsheetml/2006/main",
        "http://purl.oclc.org/ooxml/spreadsheetml/main");
    refused(Zips.write(parts), "strict");
  }

  @Test
  void damagedXmlAndNoSheets() throws Exception {
    Map<String, byte[]> parts = parts();
    Zips.edit(parts, BOOK, "</sheets>", "</sheet>");
    refused(Zips.write(parts), BOOK + " inside it is damaged");
    Map<String, byte[]> none = parts();
    none.put(BOOK, Zips.utf8(Zips.text(none, BOOK).replaceAll("(?s)<sheets>.*</sheets>", "")));
    refused(Zips.write(none), BOOK + " inside it is damaged");
  }

  /** The JDK's own decoding prints to the terminal before it throws. */
  @ParameterizedTest
  @ValueSource(ints = {20, 1019, 70_000})
  void brokenTextIsRefusedWithoutAWordOnTheTerminal(int at) {
    ByteArrayOutputStream part = new ByteArrayOutputStream();
    part.writeBytes(Zips.utf8("<a>" + "x".repeat(at)));
    part.writeBytes(new byte[] {(byte) 0xc3, (byte) 0x28}); // a lead byte without its follower
    part.writeBytes(Zips.utf8("</a>"));
    PrintStream usual = System.err;
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    System.setErr(new PrintStream(printed, true, StandardCharsets.UTF_8));
    try {
      assertThrows(
          XMLStreamException.class,
          () -> SafeXml.checkWellFormed(new ByteArrayInputStream(part.toByteArray())));
    } finally {
      System.setErr(usual);
    }
    assertEquals("", printed.toString(StandardCharsets.UTF_8));
  }

  @Test
  void aMillionFormattedBlankRowsAreNoBomb() throws Exception {
    Path file = folder.resolve("large.xlsx");
    Map<String, byte[]> parts = parts();
    byte[] sheet = parts.remove(SHEET);
    try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(file))) {
      for (Map.Entry<String, byte[]> part : parts.entrySet()) {
        out.putNextEntry(new ZipEntry(part.getKey()));
        out.write(part.getValue());
      }
      out.putNextEntry(new ZipEntry(SHEET));
      String text = new String(sheet, java.nio.charset.StandardCharsets.UTF_8);
      int end = text.indexOf("</sheetData>");
      out.write(Zips.utf8(text.substring(0, end)));
      StringBuilder rows = new StringBuilder();
      for (int r = 2; r <= 1_000_000; r++) {
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
      assertTrue(bytes > 150_000_000, "as large as it was meant to be: " + bytes);
      assertEquals(2, book.sheets().size());
    }
  }
}
