package sparewell.cli;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.util.Map;

/**
 * The terminal: prints plain text in what the terminal can show, and progress where somebody
 * watches.
 */
public final class Console {
  private static final Map<Character, String> PLAIN =
      Map.ofEntries(
          Map.entry('·', "."),
          Map.entry('–', "-"),
          Map.entry('—', "-"),
          Map.entry('…', "..."),
          Map.entry('×', "x"),
          Map.entry('≥', ">="),
          Map.entry('≤', "<="),
          Map.entry('→', "->"),
          Map.entry('±', "+/-"),
          Map.entry('’', "'"),
          Map.entry('‘', "'"),
          Map.entry('“', "\""),
          Map.entry('”', "\""));

  private final PrintWriter out;
  private final PrintWriter error;
  private final CharsetEncoder encoder;
  private final boolean watched;
  private int progressWidth;

  /**
   * A console on two streams.
   *
   * @param charset what the terminal can show
   * @param watched whether standard error is a terminal that somebody looks at
   */
  public Console(PrintStream out, PrintStream error, Charset charset, boolean watched) {
    this.out = new PrintWriter(new java.io.OutputStreamWriter(out, charset), true);
    this.error = new PrintWriter(new java.io.OutputStreamWriter(error, charset), true);
    this.encoder = charset.newEncoder();
    this.watched = watched;
  }

  /** The console of this process. */
  public static Console ofProcess() {
    String named = System.getProperty("stdout.encoding", System.getProperty("sun.stdout.encoding"));
    Charset charset =
        named != null && Charset.isSupported(named)
            ? Charset.forName(named)
            : Charset.defaultCharset();
    return new Console(System.out, System.err, charset, System.console() != null);
  }

  /** A line on standard output. */
  public synchronized void say(String line) {
    clearProgress();
    out.println(showable(line));
  }

  /** A line on standard error. */
  public synchronized void complain(String line) {
    clearProgress();
    error.println(showable(line));
  }

  /**
   * Shows how far the work is, on one line that the next call overwrites; nothing where nobody
   * watches.
   */
  public synchronized void progress(int done, int all, String what) {
    if (!watched) {
      return;
    }
    int filled = all == 0 ? 0 : done * 20 / all;
    String line =
        "["
            + "#".repeat(filled)
            + "-".repeat(20 - filled)
            + "] "
            + done
            + " of "
            + all
            + " "
            + what;
    clearProgress();
    error.print("\r" + showable(line));
    error.flush();
    progressWidth = line.length();
  }

  /** Takes the progress line away. */
  public synchronized void clearProgress() {
    if (progressWidth > 0) {
      error.print("\r" + " ".repeat(progressWidth) + "\r");
      error.flush();
      progressWidth = 0;
    }
  }

  /** Standard output for the command-line library. */
  PrintWriter out() {
    return out;
  }

  /** Standard error for the command-line library. */
  PrintWriter error() {
    return error;
  }

  private String showable(String line) {
    if (encoder.canEncode(line)) {
      return line;
    }
    StringBuilder plain = new StringBuilder();
    for (char c : line.toCharArray()) {
      plain.append(encoder.canEncode(c) ? String.valueOf(c) : PLAIN.getOrDefault(c, "?"));
    }
    return plain.toString();
  }
}
