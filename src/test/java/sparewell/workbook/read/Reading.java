package sparewell.workbook.read;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.ooxml.WorkbookPackage;
import sparewell.season.Season;
import sparewell.workbook.Books;
import sparewell.workbook.ReadOptions;

/** Result of reading a test workbook. */
public record Reading(Season season, List<Finding> findings) {
  private static final LocalDate TODAY = LocalDate.of(2026, 7, 15);

  /** Reads a workbook that must be usable. */
  public static Reading of(Books books) {
    return of(books, ReadOptions.on(TODAY));
  }

  /** Reads {@link Books#season()} with another sheet. */
  static Reading with(String sheet, String grid) {
    return of(Books.season().with(sheet, grid));
  }

  /** Reads {@link Books#season()} with more rows in a sheet. */
  static Reading plus(String sheet, String rows) {
    return of(Books.season().plus(sheet, rows));
  }

  static Reading of(Books books, ReadOptions options) {
    try {
      ReadResult result = result(books, options);
      return new Reading(result.season(), result.findings());
    } catch (UnusableInput e) {
      throw new AssertionError(e.getMessage(), e);
    }
  }

  static ReadResult result(Books books, ReadOptions options) throws UnusableInput {
    try {
      Path folder = Files.createTempDirectory("books");
      Path file = books.write(folder.resolve("season.xlsx"));
      try (WorkbookPackage workbook = WorkbookPackage.open(file)) {
        return SeasonReader.read(workbook, options);
      } finally {
        Files.delete(file);
        Files.delete(folder);
      }
    } catch (IOException | sparewell.ooxml.WorkbookRefused e) {
      throw new AssertionError(e.getMessage(), e);
    }
  }

  /** Lines like {@code error Stock E3 NOT_A_NUMBER}, one for each finding. */
  List<String> lines() {
    return findings.stream().map(Reading::line).toList();
  }

  /** Like {@code error Stock E3 NOT_A_NUMBER}. */
  public static String line(Finding finding) {
    return String.join(
        " ",
        finding.severity().word(),
        finding.at().sheet(),
        finding.at().reference(),
        finding.code().name());
  }

  /** The only finding of that kind. */
  Finding only(Code code) {
    List<Finding> found = findings.stream().filter(f -> f.code() == code).toList();
    if (found.size() != 1) {
      throw new AssertionError(code + " found " + found.size() + " times in " + lines());
    }
    return found.get(0);
  }
}
