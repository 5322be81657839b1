package sparewell.workbook.importing;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import sparewell.workbook.importing.SheetPlan.Rejected;
import sparewell.workbook.value.Words;

/** File of rejected rows beside their source, to be corrected and imported. */
public final class RejectedFile {
  private static final String REASON = "Reason";

  /** Byte order mark, by which spreadsheet programs recognise UTF-8. */
  private static final String MARK = "\ufeff";

  private RejectedFile() {}

  /**
   * Writes the rejected rows of a plan with their reasons, with the delimiter of the source.
   * Existing files are never overwritten, since they may hold corrections.
   *
   * @return {@code <name> rejected.csv}, or with a number where that one holds something else
   * @throws IOException where it cannot be written
   */
  public static Path write(SheetPlan plan) throws IOException {
    byte[] content = (MARK + text(plan)).getBytes(StandardCharsets.UTF_8);
    String name = plan.file().toFile().getName();
    int dot = name.lastIndexOf('.');
    String stem = (dot > 0 ? name.substring(0, dot) : name) + " rejected";
    for (int n = 1; ; n++) {
      Path file = plan.file().resolveSibling(stem + (n == 1 ? "" : " (" + n + ")") + ".csv");
      if (!Files.exists(file)) {
        return Files.write(file, content, StandardOpenOption.CREATE_NEW);
      }
      if (Files.isRegularFile(file)
          && Files.size(file) == content.length
          && Arrays.equals(Files.readAllBytes(file), content)) {
        return file;
      }
    }
  }

  private static String text(SheetPlan plan) throws IOException {
    StringWriter out = new StringWriter();
    CSVFormat format = CSVFormat.RFC4180.builder().setDelimiter(plan.delimiter()).get();
    int reasonAt = reasonAt(plan);
    try (CSVPrinter printer = new CSVPrinter(out, format)) {
      printer.printRecord(line(plan.headings(), REASON, reasonAt));
      for (Rejected row : plan.rejected()) {
        printer.printRecord(line(row.cells(), row.reason(), reasonAt));
      }
    }
    return out.toString();
  }

  /** Column of the reason; in rows that were rejected before it replaces the old one. */
  private static int reasonAt(SheetPlan plan) {
    int before = plan.headings().indexOf(REASON);
    int widest = plan.rejected().stream().mapToInt(r -> r.cells().size()).max().orElse(0);
    return before >= 0 ? before : Math.max(plan.headings().size(), widest);
  }

  private static List<String> line(List<String> cells, String reason, int reasonAt) {
    List<String> line = new ArrayList<>();
    for (int i = 0; i < Math.max(cells.size(), reasonAt + 1); i++) {
      line.add(i == reasonAt ? reason : i < cells.size() ? Words.neutral(cells.get(i)) : "");
    }
    return line;
  }
}
