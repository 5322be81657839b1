package sparewell.cli;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import sparewell.run.ClubReport;
import sparewell.run.ExitCode;
import sparewell.run.Outcome;
import sparewell.run.ShareRun;

/** Puts what logs say of rates into a file that others may have. */
final class ShareCommand extends Command {
  private final PositionalParamSpec books =
      parameter("BOOK", List.class, "1..*", "workbook (.xlsx, .xlsm) or folder");
  private final OptionSpec to =
      option("--to", "FILE.csv", Path.class, "file of experience; what it holds stays in it");
  private final OptionSpec report =
      option("--report", "FILE.xlsx", Path.class, "workbook of the club's rates by style");
  private final OptionSpec quiet = quiet();

  ShareCommand(Console console) {
    super(
        console,
        "share",
        "Put what workbooks say of loss rates into a file for others.",
        "No people, waters, boxes, money or dates: style, family and cover names and figures.");
  }

  @Override
  public Integer call() {
    Path file = to.getValue();
    if (file == null) {
      throw wrong("Say where to put it: --to FILE.csv.");
    }
    Path club = report.getValue();
    if (club != null && !club.toString().toLowerCase(java.util.Locale.ROOT).endsWith(".xlsx")) {
      throw wrong("--report makes a workbook: its name must end in .xlsx: " + club);
    }
    List<Path> found = Books.expand(books.getValue(), this);
    boolean silent = quiet.getValue();
    LocalDateTime now = LocalDateTime.now();
    ShareRun.Result result;
    try (Watch watch = new Watch(console, found.size(), silent)) {
      result = ShareRun.share(found, file, now.toLocalDate(), (done, all) -> watch.report(done));
    }
    int worst = result.outcomes().stream().mapToInt(Outcome::exitCode).max().orElse(ExitCode.DONE);
    if (result.fault().isPresent()) {
      console.complain(result.fault().get());
      return ExitCode.REFUSED;
    }
    say(silent, result, file);
    if (club != null) {
      ClubReport.Written written = ClubReport.write(club, result.rows(), now);
      if (!written.done()) {
        console.complain(written.line());
        return ExitCode.REFUSED;
      }
      if (!silent) {
        console.say(written.line());
      }
    }
    return worst;
  }

  /** Prints how many were done; the broken ones at the end. */
  private void say(boolean silent, ShareRun.Result result, Path file) {
    long logs = result.logs();
    if (!silent) {
      result.outcomes().stream()
          .filter(outcome -> outcome.exitCode() == ExitCode.DONE)
          .forEach(outcome -> console.say(outcome.book() + ": " + outcome.inShort()));
      console.say(
          "Written: " + file + ", which now holds " + logs + (logs == 1 ? " log." : " logs."));
    }
    List<Outcome> broken =
        result.outcomes().stream().filter(o -> o.exitCode() != ExitCode.DONE).toList();
    if (!broken.isEmpty()) {
      console.complain("Not shared, " + broken.size() + " of " + result.outcomes().size() + ":");
      broken.forEach(outcome -> outcome.problems().forEach(console::complain));
    }
  }
}
