package sparewell.ooxml;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.EncryptionMode;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files of other kinds and damaged files. */
class OtherFilesTest extends RefusedFileFixture {
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
        CRC32 crc = new CRC32();
        crc.update(part.getValue());
        entry.setCrc(crc.getValue());
        out.putNextEntry(entry);
        out.write(part.getValue());
      }
    }
    byte[] zip = bytes.toByteArray();
    int at = new String(zip, StandardCharsets.ISO_8859_1).indexOf("<sheetData>");
    zip[at + 5] ^= 1;
    refused(zip, "is damaged");
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
}
