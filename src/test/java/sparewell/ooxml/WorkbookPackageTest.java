package sparewell.ooxml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WorkbookPackageTest {
  private static final String WORKBOOK = "xl/workbook.xml";

  @TempDir private Path folder;

  private Path file(byte[] content) throws IOException {
    return Files.write(folder.resolve("season.xlsx"), content);
  }

  private Path edited(String part, String from, String to) throws IOException {
    Map<String, byte[]> parts = Zips.read(Zips.ordinary("Stock", "Trips"));
    Zips.edit(parts, part, from, to);
    return file(Zips.write(parts));
  }

  @Test
  void listsSheetsByRelationship() throws Exception {
    try (WorkbookPackage book = WorkbookPackage.open(file(Zips.ordinary("Stock", "Trips")))) {
      assertEquals(
          List.of("Stock", "Trips"), book.sheets().stream().map(SheetEntry::name).toList());
      assertEquals("xl/worksheets/sheet2.xml", book.sheets().get(1).partName().orElseThrow());
      assertEquals("xl/sharedStrings.xml", book.related("sharedStrings").orElseThrow());
      assertEquals("xl/styles.xml", book.related("styles").orElseThrow());
      assertFalse(book.date1904() || book.signed() || book.structureProtected());
      assertEquals(Fingerprint.of(book.file()), book.fingerprint());
    }
  }

  @Test
  void partsMayBeNamedAndPlacedInAnyWay() throws Exception {
    Map<String, byte[]> parts = Zips.read(Zips.ordinary("Stock"));
    parts.put("odd folder/My Cells.bin.xml", parts.remove("xl/worksheets/sheet1.xml"));
    Zips.edit(
        parts,
        "xl/_rels/workbook.xml.rels",
        "worksheets/sheet1.xml",
        "/xl/../ODD%20folder/./My%20Cells.bin.xml");
    try (WorkbookPackage book = WorkbookPackage.open(file(Zips.write(parts)))) {
      assertEquals("odd folder/My Cells.bin.xml", book.sheets().get(0).partName().orElseThrow());
    }
  }

  @Test
  void knowsVisibilityAndDateSystemAndProtection() throws Exception {
    Path file =
        edited(
            WORKBOOK,
            "<workbookPr date1904=\"false\"/>",
            "<workbookPr date1904=\"1\"/><workbookProtection lockStructure=\"1\"/>");
    Map<String, byte[]> parts = Zips.read(Files.readAllBytes(file));
    Zips.edit(parts, WORKBOOK, "name=\"Trips\"", "name=\"Trips\" state=\"veryHidden\"");
    try (WorkbookPackage book = WorkbookPackage.open(file(Zips.write(parts)))) {
      assertTrue(book.date1904());
      assertTrue(book.structureProtected());
      assertFalse(book.sheets().get(1).visible());
    }
  }

  @Test
  void aSheetIsOursOnlyWhileItsTabKeepsTheMarkedName() throws Exception {
    String names =
        "</sheets><definedNames><definedName name=\"Sparewell_sheet\" localSheetId=\"%d\""
            + " hidden=\"1\">\"Trips\"</definedName></definedNames>";
    try (WorkbookPackage book =
        WorkbookPackage.open(edited(WORKBOOK, "</sheets>", String.format(names, 1)))) {
      assertEquals(List.of(false, true), book.sheets().stream().map(SheetEntry::own).toList());
    }
    try (WorkbookPackage book =
        WorkbookPackage.open(edited(WORKBOOK, "</sheets>", String.format(names, 0)))) {
      assertEquals(List.of(false, false), book.sheets().stream().map(SheetEntry::own).toList());
    }
  }

  @Test
  void aSheetWithoutItsPartIsListedWithoutPart() throws Exception {
    Map<String, byte[]> parts = Zips.read(Zips.ordinary("Stock", "Trips"));
    parts.remove("xl/worksheets/sheet2.xml");
    try (WorkbookPackage book = WorkbookPackage.open(file(Zips.write(parts)))) {
      assertTrue(book.sheets().get(1).partName().isEmpty());
    }
  }

  @Test
  void refusesATextFileInPlainWords() throws Exception {
    Path file = file(Zips.utf8("Style,Count\ncrankbait,3\n"));
    WorkbookRefused refused =
        assertThrows(WorkbookRefused.class, () -> WorkbookPackage.open(file).close());
    assertTrue(refused.getMessage().contains("season.xlsx"), refused.getMessage());
    assertTrue(refused.problem().contains("plain text"), refused.getMessage());
  }
}
