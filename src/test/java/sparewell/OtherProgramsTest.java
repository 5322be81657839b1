package sparewell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Enumeration;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.sheet.ReportSheets;

/** The written demo workbook: its charts, and what a spreadsheet program makes of its formulas. */
class OtherProgramsTest {
  private static final Pattern TITLE = Pattern.compile("<c:title>.*?</c:title>");
  private static final Pattern WORDS = Pattern.compile("<a:t>([^<]*)</a:t>");
  private static final Pattern KNOWN_VALUE = Pattern.compile("(<f>[^<]*</f>)<v>[^<]*</v>");

  @TempDir static Path folder;
  private static Path written;

  @BeforeAll
  static void analyse() throws IOException {
    written = AnalysedDemo.copy(folder);
  }

  @Test
  void everyChartIsThereWithTitlesOfItsAxes() throws IOException {
    Map<String, List<String>> titles = new TreeMap<>();
    try (ZipFile zip = new ZipFile(written.toFile())) {
      for (Enumeration<? extends ZipEntry> all = zip.entries(); all.hasMoreElements(); ) {
        ZipEntry entry = all.nextElement();
        if (entry.getName().matches("xl/charts/[^/]*\\.xml")) {
          String xml = new String(zip.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8);
          List<String> found = TITLE.matcher(xml).results().map(m -> words(m.group())).toList();
          titles.put(found.get(0), found);
        }
      }
    }
    List<String> known =
        List.of(
            "Chance to run out against pieces aboard: the items worst off",
            "Losses per month by cause",
            "Tackle weight along the boat",
            "What the money buys",
            "What you lose of each style, with 90 % intervals");
    assertTrue(titles.keySet().containsAll(known), titles.keySet().toString());
    assertEquals(known.size() + 5, titles.size(), "beside the five styles that run down first");
    titles.forEach((title, all) -> assertEquals(3, all.size(), title + ": " + all));
    assertTrue(titles.get("What the money buys").contains("Money spent (USD)"));
    assertTrue(titles.get("Tackle weight along the boat").contains("Weight (lb)"));
  }

  private static String words(String title) {
    StringBuilder words = new StringBuilder();
    Matcher matcher = WORDS.matcher(title);
    while (matcher.find()) {
      words.append(matcher.group(1));
    }
    return words.toString();
  }

  /** LibreOffice, any version from 7 on, headless: {@code soffice --convert-to xlsx}. */
  @Test
  void aSpreadsheetProgramComputesTheSameSums() throws IOException {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/soffice")), "no LibreOffice");
    Path bare = folder.resolve("bare.xlsx");
    withoutValues(written, bare);
    Path out = Files.createDirectory(folder.resolve("computed"));
    soffice(bare, out);
    Map<String, Double> known = formulas(written);
    Map<String, Double> computed = formulas(out.resolve("bare.xlsx"));
    assertTrue(known.size() > 20, known.keySet().toString());
    known.forEach(
        (cell, value) ->
            assertEquals(
                value,
                computed.getOrDefault(cell, Double.NaN),
                1e-6 * (1 + Math.abs(value)),
                cell));
  }

  private static void soffice(Path book, Path out) throws IOException {
    Process process =
        new ProcessBuilder(
                "/usr/bin/soffice",
                "-env:UserInstallation=" + folder.resolve("profile").toUri(),
                "--headless",
                "--convert-to",
                "xlsx",
                "--outdir",
                out.toString(),
                book.toString())
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    try {
      assertTrue(process.waitFor(5, TimeUnit.MINUTES), "LibreOffice did not end");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      process.destroyForcibly();
    }
    assertTrue(Files.exists(out.resolve("bare.xlsx")), "LibreOffice wrote nothing");
  }

  /** A copy whose formulas have no value, so that the program has to compute them. */
  private static void withoutValues(Path from, Path to) throws IOException {
    try (ZipFile zip = new ZipFile(from.toFile());
        ZipOutputStream copy = new ZipOutputStream(Files.newOutputStream(to))) {
      for (Enumeration<? extends ZipEntry> all = zip.entries(); all.hasMoreElements(); ) {
        ZipEntry entry = all.nextElement();
        byte[] bytes = zip.getInputStream(entry).readAllBytes();
        if (entry.getName().startsWith("xl/worksheets/") && entry.getName().endsWith(".xml")) {
          String xml = new String(bytes, StandardCharsets.UTF_8);
          bytes = KNOWN_VALUE.matcher(xml).replaceAll("$1").getBytes(StandardCharsets.UTF_8);
        }
        copy.putNextEntry(new ZipEntry(entry.getName()));
        copy.write(bytes);
        copy.closeEntry();
      }
    }
  }

  /** Values of all formulas on our sheets by sheet and cell. */
  private static Map<String, Double> formulas(Path book) throws IOException {
    Map<String, Double> values = new TreeMap<>();
    try (XSSFWorkbook workbook = new XSSFWorkbook(Files.newInputStream(book))) {
      for (Sheet sheet : workbook) {
        if (!ReportSheets.names().contains(sheet.getSheetName())) {
          continue;
        }
        for (Row row : sheet) {
          for (Cell cell : row) {
            if (cell.getCellType() == CellType.FORMULA
                && cell.getCachedFormulaResultType() == CellType.NUMERIC) {
              values.put(
                  sheet.getSheetName() + " " + cell.getAddress(), cell.getNumericCellValue());
            }
          }
        }
      }
    }
    return values;
  }
}
