package sparewell.save;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sparewell.ooxml.NewCell;
import sparewell.ooxml.NewRows;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.ooxml.Zips;
import sparewell.render.RenderOptions;
import sparewell.render.SheetRenderer;
import sparewell.save.append.AppendRequest;
import sparewell.units.UnitSystem;

/** A new workbook that differs from what it should be is discarded, whatever made it so. */
class ReadBackTest {
  private static final List<OwnSheet> SHEETS = List.of(new OwnSheet("Spares", false));

  @TempDir private Path folder;
  private Path book;
  private Path fresh;

  /** A workbook with two sheets and names of the angler's, and one sheet of ours. */
  @BeforeEach
  void make() throws Exception {
    Map<String, byte[]> parts = Zips.read(Zips.ordinary("Stock", "Trips"));
    Zips.edit(
        parts,
        "xl/workbook.xml",
        "</sheets>",
        "</sheets><definedNames><definedName name=\"All\">Stock!$A$1:$B$9</definedName>"
            + "<definedName name=\"Own\" localSheetId=\"1\">Trips!$A$1</definedName>"
            + "</definedNames><calcPr calcId=\"7\" iterate=\"1\"/>");
    Zips.edit(
        parts,
        "xl/_rels/workbook.xml.rels",
        "</Relationships>",
        "<Relationship Id=\"rId77\" Target=\"calcChain.xml\" Type=\"http://schemas.openxmlformats"
            + ".org/officeDocument/2006/relationships/calcChain\"/></Relationships>");
    parts.put("xl/calcChain.xml", Zips.utf8(chain("<c r=\"A9\" i=\"1\"/><c r=\"A8\"/>")));
    book = Files.write(folder.resolve("season.xlsx"), Zips.write(parts));
    fresh = folder.resolve("fresh.xlsx");
    try (WorkbookPackage first = WorkbookPackage.open(book)) {
      WorkbookSaver.save(rendered(first), first, book, Saving.NOW, 10, false);
    }
    Map<String, byte[]> saved = Zips.read(Files.readAllBytes(book));
    String own = "<c r=\"B2\" i=\"3\"/><c r=\"B3\"/><c r=\"A9\" i=\"1\"/><c r=\"A8\"/>";
    saved.put("xl/calcChain.xml", Zips.utf8(chain(own)));
    Files.write(book, Zips.write(saved));
  }

  private static String chain(String cells) {
    return "<calcChain xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">"
        + cells
        + "</calcChain>";
  }

  private static OwnParts rendered(WorkbookPackage book) throws WorkbookRefused {
    OwnParts parts = OwnParts.of(book, SHEETS);
    RenderOptions options = new RenderOptions("2026-03-08", "Season", "USD", false, Map.of());
    SheetRenderer.render(
        OwnSample.sheets(List.of("Spares"), "x"), UnitSystem.US, options, parts, Runnable::run);
    return parts;
  }

  @Test
  void whatIsAsItShouldBePasses() throws Exception {
    try (WorkbookPackage before = WorkbookPackage.open(book)) {
      NewPackage plan = SavePlan.of(rendered(before));
      plan.write(fresh);
      ReadBack.check(plan, SHEETS, fresh);
      String chain = Zips.text(Zips.read(Files.readAllBytes(fresh)), "xl/calcChain.xml");
      assertEquals(chain("<c r=\"A9\" i=\"1\"/><c r=\"A8\"/>"), chain);
    }
  }

  @Test
  void aRunThatTakesAllOurSheetsAwayPasses() throws Exception {
    Map<String, byte[]> parts = Zips.read(Files.readAllBytes(book));
    parts.put("xl/calcChain.xml", Zips.utf8(chain("<c r=\"B2\" i=\"3\"/><c r=\"B3\"/>")));
    Files.write(book, Zips.write(parts));
    try (WorkbookPackage before = WorkbookPackage.open(book)) {
      NewPackage plan = SavePlan.of(OwnParts.of(before, List.of()));
      plan.write(fresh);
      ReadBack.check(plan, List.of(), fresh);
      Map<String, byte[]> left = Zips.read(Files.readAllBytes(fresh));
      assertTrue(
          left.keySet().stream().noneMatch(n -> n.contains("sparewell")), left.keySet() + "");
      assertFalse(left.containsKey("xl/calcChain.xml"), "an empty chain is not allowed");
      assertFalse(Zips.text(left, "xl/_rels/workbook.xml.rels").contains("calcChain"));
    }
  }

  @Test
  void rowsThatDoNotReadBackAreNotWritten() throws Exception {
    try (WorkbookPackage before = WorkbookPackage.open(book)) {
      NewCell cell = new NewCell(1, NewCell.Kind.TEXT, "new", 0);
      NewRows rows = new NewRows(before.sheets().get(0), 1, 1, 1, 1, 1, List.of(List.of(cell)));
      AppendRequest request =
          new AppendRequest(before, List.of(rows), i -> false, written -> false, Saving.NOW, 10);
      byte[] bytes = Files.readAllBytes(book);
      WorkbookRefused refused =
          assertThrows(WorkbookRefused.class, () -> WorkbookSaver.append(request));
      assertTrue(refused.problem().contains("comparison with yours (the rows)"));
      assertArrayEquals(bytes, Files.readAllBytes(book));
    }
  }

  @Test
  void rowsWithAnythingElseChangedOrBrokenAreNotTaken() throws Exception {
    try (WorkbookPackage before = WorkbookPackage.open(book)) {
      AppendRequest request =
          new AppendRequest(before, List.of(), i -> false, written -> true, Saving.NOW, 10);
      String part = "xl/worksheets/sheet1.xml";
      byte[] rows = Zips.utf8("<worksheet><sheetData/></worksheet>");
      NewPackage plan =
          new NewPackage(before, Set.of(), Map.of(part, PackedPart.of(rows)), Map.of());
      plan.write(fresh);
      ReadBack.checkAppended(request, plan, fresh);
      Map<String, byte[]> other = Zips.read(Files.readAllBytes(fresh));
      Zips.edit(other, "xl/workbook.xml", "calcId=\"7\"", "calcId=\"8\"");
      Files.write(fresh, Zips.write(other));
      assertThrows(
          WorkbookRefused.class, () -> ReadBack.checkAppended(request, plan, fresh), "changed");
      Files.delete(fresh);
      PackedPart broken = PackedPart.of(Zips.utf8("<worksheet><sheetData>"));
      NewPackage harmful = new NewPackage(before, Set.of(), Map.of(part, broken), Map.of());
      harmful.write(fresh);
      assertThrows(
          WorkbookRefused.class, () -> ReadBack.checkAppended(request, harmful, fresh), "broken");
    }
  }

  /** Each edited part with one thing of the angler's changed. */
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "xl/workbook.xml, name=\"Trips\", name=\"Trip\"",
        "xl/workbook.xml, Stock!$A$1:$B$9, Stock!$A$1:$B$8",
        "xl/workbook.xml, localSheetId=\"1\">Trips, localSheetId=\"0\">Trips",
        "xl/workbook.xml, ` iterate=\"1\"`, ``",
        "xl/workbook.xml, `<workbookView `, `<workbookView tabRatio=\"500\" `",
        "xl/_rels/workbook.xml.rels, rId77, rId78",
        "[Content_Types].xml, `ContentType=\"application/xml\"`, `ContentType=\"text/xml\"`",
        "xl/calcChain.xml, <c r=\"A8\"/>, ``",
        "xl/calcChain.xml, i=\"1\", i=\"2\"",
      })
  void anEditThatHarmsIsFound(String part, String from, String to) throws Exception {
    try (WorkbookPackage before = WorkbookPackage.open(book)) {
      NewPackage plan = SavePlan.of(rendered(before));
      Path honest = folder.resolve("honest.xlsx");
      plan.write(honest);
      String text = Zips.text(Zips.read(Files.readAllBytes(honest)), part);
      assertTrue(text.contains(from), text);
      Map<String, PackedPart> edited = new TreeMap<>(plan.edited());
      edited.put(PartNames.key(part), PackedPart.of(Zips.utf8(text.replace(from, to))));
      NewPackage harmful = new NewPackage(before, plan.dropped(), edited, plan.added());
      harmful.write(fresh);
      refused(harmful, part);
    }
  }

  @Test
  void aChangedFormatIsFound() throws Exception {
    Path plain = Files.write(folder.resolve("plain.xlsx"), Zips.ordinary("Stock"));
    try (WorkbookPackage before = WorkbookPackage.open(plain)) {
      NewPackage plan = SavePlan.of(rendered(before));
      plan.write(folder.resolve("honest.xlsx"));
      Map<String, byte[]> parts = Zips.read(Files.readAllBytes(folder.resolve("honest.xlsx")));
      String styles = Zips.text(parts, "xl/styles.xml");
      Map<String, PackedPart> edited = new TreeMap<>(plan.edited());
      String changed = styles.replaceFirst("<sz val=\"[^\"]*\"/>", "<sz val=\"99\"/>");
      edited.put("xl/styles.xml", PackedPart.of(Zips.utf8(changed)));
      NewPackage harmful = new NewPackage(before, plan.dropped(), edited, plan.added());
      harmful.write(fresh);
      refused(harmful, "xl/styles.xml");
    }
  }

  /** The disk gave back something else than was written. */
  @Test
  void partsThatDifferAreMissingOrTooMany() throws Exception {
    try (WorkbookPackage before = WorkbookPackage.open(book)) {
      NewPackage plan = SavePlan.of(rendered(before));
      plan.write(folder.resolve("honest.xlsx"));
      byte[] written = Files.readAllBytes(folder.resolve("honest.xlsx"));
      String ours = "xl/worksheets/sparewell_sheet1.xml";
      for (String part : List.of("xl/worksheets/sheet1.xml", "docProps/app.xml", ours)) {
        Map<String, byte[]> missing = Zips.read(written);
        assertTrue(missing.remove(part) != null, part);
        Files.write(fresh, Zips.write(missing));
        refused(plan, "");
        Map<String, byte[]> more = Zips.read(written);
        more.put("xl/more.xml", Zips.utf8("<more/>"));
        Files.write(fresh, Zips.write(more));
        refused(plan, "list of parts");
        Map<String, byte[]> other = Zips.read(written);
        other.put(part, Zips.utf8(Zips.text(other, part) + " "));
        Files.write(fresh, Zips.write(other));
        refused(plan, "");
      }
    }
  }

  @Test
  void aSheetThatIsNotAsked() throws Exception {
    try (WorkbookPackage before = WorkbookPackage.open(book)) {
      NewPackage plan = SavePlan.of(rendered(before));
      plan.write(fresh);
      for (List<OwnSheet> sheets :
          List.of(
              List.<OwnSheet>of(),
              List.of(OwnSheet.theirs("Spares")),
              List.of(SHEETS.get(0), new OwnSheet("Buy list", false)))) {
        WorkbookRefused refused =
            assertThrows(WorkbookRefused.class, () -> ReadBack.check(plan, sheets, fresh));
        assertTrue(refused.problem().contains("list of sheets"), refused.problem());
      }
    }
  }

  private void refused(NewPackage plan, String where) {
    WorkbookRefused refused =
        assertThrows(WorkbookRefused.class, () -> ReadBack.check(plan, SHEETS, fresh));
    assertTrue(refused.problem().contains("did not pass its comparison"), refused.problem());
    assertTrue(refused.problem().contains(where), refused.problem());
  }
}
