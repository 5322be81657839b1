package sparewell.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import sparewell.workbook.InputSheets;

/** Options of every command over workbooks. */
final class BookOptions {
  private final Command form;
  private final PositionalParamSpec books;
  private final OptionSpec asOf;
  private final OptionSpec strict;
  private final OptionSpec quiet;

  BookOptions(Command form) {
    this.form = form;
    books = form.parameter("BOOK", List.class, "1..*", "workbook (.xlsx, .xlsm) or folder");
    asOf = form.option("--as-of", "DATE", LocalDate.class, "date of the analysis, yyyy-mm-dd");
    strict = form.flag("--strict", "exit with 1 where there are errors among the findings");
    quiet = form.flag("--quiet", "print nothing but problems");
  }

  List<Path> books() {
    return books.getValue();
  }

  Optional<LocalDate> asOf() {
    Optional<LocalDate> asked = Optional.ofNullable(asOf.getValue());
    if (asked.isPresent() && !InputSheets.isPlausible(asked.get())) {
      throw form.wrong("--as-of must be a date between 1950 and 2199: " + asked.get());
    }
    return asked;
  }

  boolean strict() {
    return strict.getValue();
  }

  boolean quiet() {
    return quiet.getValue();
  }
}
