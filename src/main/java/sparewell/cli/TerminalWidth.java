package sparewell.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.TimeUnit;

/** Width of the terminal, in characters. */
final class TerminalWidth {
  private static final int NARROWEST = 30;
  private static final long PATIENCE_MILLIS = 300;

  private TerminalWidth() {}

  /**
   * The width by the environment, else by the terminal itself where it can be asked.
   *
   * @param said the variable COLUMNS, null without one
   * @param watched whether there is a terminal
   * @return characters in a line; where it is not known, so many that no line is broken
   */
  static int of(String said, boolean watched) {
    int columns = number(said);
    if (columns == 0 && watched) {
      columns = asked();
    }
    return columns == 0 ? Integer.MAX_VALUE : Math.max(NARROWEST, columns);
  }

  /** By the standard program for terminals (POSIX); systems without it give 0. */
  private static int asked() {
    try {
      Process stty =
          new ProcessBuilder("stty", "size")
              .redirectInput(ProcessBuilder.Redirect.INHERIT)
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      if (!stty.waitFor(PATIENCE_MILLIS, TimeUnit.MILLISECONDS)) {
        stty.destroy();
        return 0;
      }
      String rowsAndColumns =
          new String(stty.getInputStream().readAllBytes(), StandardCharsets.US_ASCII).strip();
      return number(rowsAndColumns.substring(rowsAndColumns.indexOf(' ') + 1));
    } catch (IOException none) {
      return 0;
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      return 0;
    }
  }

  private static int number(String text) {
    return text != null && text.matches("\\d{1,4}") ? Integer.parseInt(text) : 0;
  }
}
