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
import java.util.stream.Stream;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import sparewell.run.Batch;
import sparewell.run.Outcome;

/**
 * What the commands over several workbooks share: which they are, and what is printed about them.
 */
final class Books {
  private Books() {}

  /** The workbooks named, and those in the folders named, in order of their names. */
  static List<Path> expand(List<Path> named, CommandSpec spec) {
    List<Path> found = new ArrayList<>();
    for (Path path : named) {
      if (!Files.isDirectory(path)) {
        found.add(path);
        continue;
      }
      try (Stream<Path> inside = Files.list(path)) {
        List<Path> books = inside.filter(Books::looksLikeWorkbook).sorted().toList();
        if (books.isEmpty()) {
          throw new ParameterException(
              spec.commandLine(),
              "There is no workbook (.xlsx, .xlsm) in the folder " + path + ".");
        }
        found.addAll(books);
      } catch (IOException unreadable) {
        throw new ParameterException(
            spec.commandLine(), "The folder " + path + " cannot be read.", unreadable);
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

  private static boolean looksLikeWorkbook(Path path) {
    String name = path.getFileName().toString().toLowerCase(Locale.ROOT);
    // Names that begin so are lock files and leftovers of spreadsheet programs, and our own
    // temporary files.
    return Files.isRegularFile(path)
        && (name.endsWith(".xlsx") || name.endsWith(".xlsm"))
        && !name.startsWith("~$")
        && !name.startsWith(".");
  }

  /** Prints what came of one workbook. */
  static void report(Console console, boolean quiet, Outcome outcome) {
    if (!quiet) {
      outcome.summary().forEach(console::say);
    }
    outcome.problems().forEach(console::complain);
  }

  /** Runs the work, prints what came of each workbook in order, and gives the worst exit code. */
  static int report(
      Console console,
      boolean quiet,
      List<Path> books,
      Function<Batch.Progress, List<Outcome>> work) {
    List<Outcome> outcomes;
    try (Watch watch = new Watch(console, books.size(), quiet)) {
      outcomes = work.apply((done, all) -> watch.report(done));
    }
    int worst = 0;
    for (Outcome outcome : outcomes) {
      if (!quiet && outcomes.size() > 1 && !outcome.summary().isEmpty()) {
        console.say("== " + outcome.book());
      }
      report(console, quiet, outcome);
      if (!quiet && outcomes.size() > 1 && !outcome.summary().isEmpty()) {
        console.say("");
      }
      worst = Math.max(worst, outcome.exitCode());
    }
    if (!quiet && outcomes.size() > 1) {
      long done = outcomes.stream().filter(outcome -> outcome.exitCode() < 3).count();
      console.say(done + " of " + outcomes.size() + " workbooks done.");
      outcomes.stream()
          .filter(outcome -> outcome.exitCode() >= 3)
          .forEach(outcome -> console.say("  left as it was: " + outcome.book()));
    }
    return worst;
  }
}
