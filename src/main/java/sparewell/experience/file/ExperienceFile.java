package sparewell.experience.file;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import sparewell.experience.Entry;
import sparewell.workbook.value.Words;

/**
 * A file of experience: CSV of RFC 4180, UTF-8, one row for each log and quantity. Files are merged
 * by concatenation; headers in the middle are ignored.
 */
public final class ExperienceFile {
  public static final List<String> COLUMNS =
      List.of(
          "log_id,fingerprint,last_year,kind,unit,name,family,ln_estimate,ln_variance,trips,hours,pieces"
              .split(","));

  private static final long MOST_BYTES = 256L << 20;
  private static final int MOST_FAULTS = 50;

  private ExperienceFile() {}

  /** Content of a file; {@code faults} are those of the other lines, the first 50. */
  public record Reading(List<Entry> rows, List<Fault> faults, int leftOut) {}

  /** A line that was left out, lines counted from 1. */
  public record Fault(long line, String why) {}

  /** Fault of a file that is no file of experience. */
  public static final class NotExperience extends Exception {
    private static final long serialVersionUID = 1;

    NotExperience(String message) {
      super(message);
    }
  }

  /**
   * Reads a file.
   *
   * @throws NotExperience where it is none, in words that begin with its name
   * @throws IOException where it cannot be read
   */
  public static Reading read(Path file) throws NotExperience, IOException {
    if (Files.size(file) > MOST_BYTES) {
      throw new NotExperience(file + " is larger than 256 MB. Pool it first, or split it.");
    }
    String text = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
    String body = text.startsWith("\ufeff") ? text.substring(1) : text;
    List<Entry> rows = new ArrayList<>();
    List<Fault> faults = new ArrayList<>();
    int leftOut = 0;
    try (CSVParser parser = CSVParser.parse(new StringReader(body), CSVFormat.RFC4180)) {
      long line = 1;
      for (CSVRecord cells : parser) {
        if (line == 1 && !isHeader(cells)) {
          throw new NotExperience(
              file
                  + " is not a file of experience: its first line must be "
                  + String.join(",", COLUMNS)
                  + ".");
        }
        if (!isHeader(cells) && !cells.stream().allMatch(String::isBlank)) {
          try {
            rows.add(EntryText.read(cells.toList()));
          } catch (IllegalArgumentException wrong) {
            leftOut++;
            if (faults.size() < MOST_FAULTS) {
              faults.add(new Fault(line, wrong.getMessage()));
            }
          }
        }
        line = parser.getCurrentLineNumber() + 1;
      }
      if (line == 1) {
        throw new NotExperience(file + " is empty.");
      }
    } catch (UncheckedIOException | IllegalStateException broken) {
      throw new NotExperience(
          file + " is not a CSV file: a quotation mark in it is never closed, or misplaced.");
    }
    return new Reading(rows, faults, leftOut);
  }

  private static boolean isHeader(CSVRecord cells) {
    return cells.toList().equals(COLUMNS);
  }

  /** Text of a file with these rows, sorted by log and quantity. */
  public static String text(Collection<Entry> rows) {
    StringBuilder out = new StringBuilder();
    try (CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180)) {
      printer.printRecord(COLUMNS);
      List<Entry> sorted = new ArrayList<>(rows);
      sorted.sort(
          Comparator.comparing(Entry::logId)
              .thenComparing(Entry::key)
              .thenComparing(Entry.BY_WEALTH));
      for (Entry row : sorted) {
        printer.printRecord(
            row.logId(),
            row.fingerprint(),
            row.year(),
            row.key().kind().word(),
            row.key().unit().word(),
            Words.neutral(row.name()),
            Words.neutral(row.family()),
            decimal(row.logEstimate(), 6),
            decimal(row.logVariance(), 6),
            row.trips(),
            decimal(row.hours(), 2),
            row.pieces());
      }
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return out.toString();
  }

  private static String decimal(double value, int digits) {
    return BigDecimal.valueOf(value).setScale(digits, RoundingMode.HALF_UP).toPlainString();
  }
}
