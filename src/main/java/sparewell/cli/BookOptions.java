package sparewell.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What every command over workbooks takes. */
final class BookOptions {
  @Parameters(
      paramLabel = "BOOK",
      arity = "1..*",
      description = "workbook (.xlsx, .xlsm) or folder")
  List<Path> books;

  @Option(names = "--as-of", paramLabel = "DATE", description = "date of the analysis, yyyy-mm-dd")
  LocalDate asOf;

  @Option(names = "--strict", description = "exit with 1 where there are errors among the findings")
  boolean strict;

  @Option(names = "--quiet", description = "print nothing but problems")
  boolean quiet;
}
