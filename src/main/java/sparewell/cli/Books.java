package sparewell.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.function.IntConsumer;
import sparewell.run.ExitCode;
import sparewell.run.Outcome;
import sparewell.run.SavedBooks;

/** Code of all commands over several workbooks: finds the workbooks, prints what came of each. */
final class Books {
  private static final int WIDTH = 80;
  private static final int LONGEST_NAME = 34;

  private Books() {}

  /** The workbooks named, and those in the folders named, in order of their names. */
  static List<Path> expand(List<Path> named, Command command) {
    List<Path> found = new ArrayList<>();
    for (Path path : named) {
      if (!Files.isDirectory(path)) {
        found.add(path);
        continue;
      }
      try {
        List<Path> books = SavedBooks.in(path);
        if (books.isEmpty()) {
          throw command.wrong("There is no workbook (.xlsx, .xlsm) in the folder " + path + ".");
        }
        found.addAll(books);
      } catch (IOException unreadable) {
        throw command.wrong("The folder " + path + " cannot be read.");
      }
    }
    return once(found);
  }

  /** A workbook named twice, or by its folder too, is one. */
  private static List<Path> once(List<Path> found) {
    Map<Path, Path> byPlace = new LinkedHashMap<>();
    for (Path path : found) {
      Path place = path.toAbsolutePath().normalize();
      try {
        place = path.toRealPath();
      } catch (IOException missing) {
        // It is reported when it is opened.
      }
      byPlace.putIfAbsent(place, path);
    }
    return List.copyOf(byPlace.values());
  }

  static void report(Console console, boolean quiet, Outcome outcome) {
    if (!quiet) {
      outcome.summary().forEach(console::say);
    }
    outcome.problems().forEach(console::complain);
  }

  /** Runs the work, prints what came of each workbook in order, and gives the worst exit code. */
  static int report(
      Console console, boolean quiet, int books, Function<IntConsumer, List<Outcome>> work) {
    List<Outcome> outcomes;
    try (Watch watch = new Watch(console, books, quiet)) {
      outcomes = work.apply(watch::report);
    }
    int worst = 0;
    boolean several = !quiet && outcomes.size() > 1;
    for (Outcome outcome : outcomes) {
      boolean framed = several && !outcome.summary().isEmpty();
      if (framed) {
        console.say("== " + outcome.book());
      }
      report(console, quiet, outcome);
      if (framed) {
        console.say("");
      }
      worst = Math.max(worst, outcome.exitCode());
    }
    if (several) {
      table(outcomes).forEach(console::say);
    }
    return worst;
  }

  /** One line for each workbook, at most 80 characters, and their number. */
  private static List<String> table(List<Outcome> outcomes) {
    int longest = outcomes.stream().mapToInt(o -> o.book().toString().length()).max().orElse(0);
    int wide = Math.min(LONGEST_NAME, Math.max("Workbook".length(), longest));
    String form = "%-" + wide + "s  %-7s  %s";
    List<String> lines = new ArrayList<>();
    lines.add(String.format(Locale.ROOT, form, "Workbook", "Result", "To do, or what is wrong"));
    for (Outcome outcome : outcomes) {
      String name = outcome.book().toString();
      String end = name.length() > wide ? "..." + name.substring(name.length() - wide + 3) : name;
      String result = outcome.exitCode() != ExitCode.REFUSED ? "done" : "refused";
      String line = String.format(Locale.ROOT, form, end, result, outcome.inShort());
      lines.add(line.length() > WIDTH ? line.substring(0, WIDTH - 3) + "..." : line);
    }
    long done = outcomes.stream().filter(outcome -> outcome.exitCode() != ExitCode.REFUSED).count();
    lines.add(done + " of " + outcomes.size() + " workbooks done.");
    return lines;
  }
}
