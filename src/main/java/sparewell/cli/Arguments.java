package sparewell.cli;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Locale;
import java.util.function.Function;
import picocli.CommandLine;
import picocli.CommandLine.TypeConversionException;
import sparewell.workbook.DateOrder;

/** Reads the values of options, and says in plain words what is wrong with one. */
final class Arguments {
  private Arguments() {}

  static void register(CommandLine line) {
    line.registerConverter(
        LocalDate.class,
        text -> read(text, LocalDate::parse, "is not a date; write it like 2026-05-03"));
    line.registerConverter(
        BigDecimal.class,
        text -> read(text, Arguments::amount, "is not a number; write it like 12.5"));
    line.registerConverter(
        DateOrder.class, text -> read(text, Arguments::order, "is none of ymd, dmy, mdy"));
    line.registerConverter(
        Path.class,
        text ->
            read(
                text,
                Path::of,
                "is no file name that this system and its language settings allow"));
  }

  private static <T> T read(String text, Function<String, T> parser, String wrong) {
    try {
      return parser.apply(text);
    } catch (IllegalArgumentException | DateTimeException e) {
      throw new TypeConversionException("'" + text + "' " + wrong);
    }
  }

  private static DateOrder order(String text) {
    return DateOrder.valueOf(text.toUpperCase(Locale.ROOT));
  }

  /** Figures and one point alone, which keeps out exponents of any size. */
  private static BigDecimal amount(String text) {
    boolean plain = text.matches("[+-]?(?:\\d{1,15}(?:\\.\\d{0,15})?|\\.\\d{1,15})");
    return new BigDecimal(plain ? text : "");
  }
}
