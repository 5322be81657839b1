package sparewell.cli;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import picocli.CommandLine.Model.CommandSpec;
import sparewell.run.Wrapping;

/** Output in characters that the terminal can show, and a progress line on a terminal. */
public final class Console {
  private static final Map<String, String> PLAIN =
      Map.ofEntries(
          Map.entry("·", "."),
          Map.entry("–", "-"),
          Map.entry("—", "-"),
          Map.entry("…", "..."),
          Map.entry("×", "x"),
          Map.entry("−", "-"),
          Map.entry("½", " 1/2"),
          Map.entry("¼", " 1/4"),
          Map.entry("¾", " 3/4"),
          Map.entry("≥", ">="),
          Map.entry("≤", "<="),
          Map.entry("→", "->"),
          Map.entry("±", "+/-"),
          Map.entry("’", "'"),
          Map.entry("‘", "'"),
          Map.entry("“", "\""),
          Map.entry("”", "\""));

  private static final int USUAL_WIDTH = 80;
  private static final int NARROWEST = 30;

  final PrintWriter out;
  final PrintWriter error;
  private final CharsetEncoder encoder;

  /** Whether the terminal is interactive. */
  final boolean watched;

  private final int width;
  private int progressWidth;

  /** A console on two streams; longer lines than {@code width} are broken between words. */
  public Console(PrintStream out, PrintStream error, Charset charset, boolean watched, int width) {
    this.width = width;
    this.out = new PrintWriter(new java.io.OutputStreamWriter(out, charset), true);
    this.error = new PrintWriter(new java.io.OutputStreamWriter(error, charset), true);
    this.encoder = charset.newEncoder();
    this.watched = watched;
  }

  public static Console ofProcess() {
    Charset charset =
        Stream.of("stdout.encoding", "sun.stdout.encoding", "native.encoding")
            .map(System::getProperty)
            .filter(name -> name != null && Charset.isSupported(name))
            .findFirst()
            .map(Charset::forName)
            .orElseGet(Charset::defaultCharset);
    boolean watched = System.console() != null && !"dumb".equals(System.getenv("TERM"));
    int width = width(System.getenv("COLUMNS"), watched);
    return new Console(System.out, System.err, charset, watched, width);
  }

  /**
   * Characters in a line: by the variable COLUMNS, null without one, else by the terminal, 80 where
   * it does not tell. Without a terminal they are so many that no line is broken.
   */
  static int width(String columns, boolean watched) {
    if (columns != null && columns.matches("[1-9]\\d{0,3}")) {
      return Math.max(NARROWEST, Integer.parseInt(columns));
    }
    return watched
        ? CommandSpec.create().usageMessage().autoWidth(true).width()
        : Integer.MAX_VALUE;
  }

  public synchronized void say(String line) {
    clearProgress();
    lines(line).forEach(out::println);
  }

  public synchronized void complain(String line) {
    clearProgress();
    lines(line).forEach(error::println);
  }

  /** Characters that lines of running text should have. */
  int columns() {
    return Math.min(width, USUAL_WIDTH);
  }

  /** The line, where it is too long broken between words; a table's spaces stay otherwise. */
  private List<String> lines(String line) {
    return Stream.of(showable(line).split("\n", -1))
        .flatMap(one -> (one.length() > width ? Wrapping.lines(one, width) : List.of(one)).stream())
        .toList();
  }

  /** Shows progress on one line that the next call overwrites; only on an interactive terminal. */
  public synchronized void progress(int done, int all, String what) {
    if (!watched) {
      return;
    }
    int filled = all == 0 ? 0 : done * 20 / all;
    String bar = "[" + "#".repeat(filled) + "-".repeat(20 - filled) + "] ";
    String line = (all > 1 ? bar + done + " of " + all + " " : "") + what;
    clearProgress();
    error.print("\r" + showable(line));
    error.flush();
    progressWidth = line.length();
  }

  public synchronized void clearProgress() {
    if (progressWidth > 0) {
      error.print("\r" + " ".repeat(progressWidth) + "\r");
      error.flush();
      progressWidth = 0;
    }
  }

  /** Control characters out of a workbook or file name could steer the terminal. */
  private String showable(String line) {
    StringBuilder plain = new StringBuilder();
    line.codePoints()
        .filter(c -> c == '\n' || !Character.isISOControl(c))
        .mapToObj(Character::toString)
        .forEach(c -> plain.append(encoder.canEncode(c) ? c : PLAIN.getOrDefault(c, "?")));
    return plain.toString();
  }
}
