package sparewell.cli;

import java.math.BigDecimal;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Locale;
import picocli.CommandLine;
import picocli.CommandLine.TypeConversionException;
import sparewell.workbook.DateOrder;

/** Reads the values of options, and says in plain words what is wrong with one. */
final class Arguments {
  private Arguments() {}

  static void register(CommandLine line) {
    line.registerConverter(LocalDate.class, Arguments::date);
    line.registerConverter(BigDecimal.class, Arguments::amount);
    line.registerConverter(Path.class, Arguments::path);
    line.registerConverter(DateOrder.class, Arguments::order);
  }

  private static LocalDate date(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeException e) {
      throw new TypeConversionException("'" + text + "' is not a date; write it like 2026-05-03");
    }
  }

  private static DateOrder order(String text) {
    try {
      return DateOrder.valueOf(text.toUpperCase(Locale.ROOT));
    } catch (IllegalArgumentException e) {
      throw new TypeConversionException("'" + text + "' is none of ymd, dmy, mdy");
    }
  }

  private static BigDecimal amount(String text) {
    if (!text.matches("[+-]?(?:\\d{1,15}(?:\\.\\d{0,15})?|\\.\\d{1,15})")) {
      throw new TypeConversionException("'" + text + "' is not a number; write it like 12.5");
    }
    return new BigDecimal(text);
  }

  private static Path path(String text) {
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw new TypeConversionException(
          "'" + text + "' is no file name that this system and its language settings allow");
    }
  }
}
