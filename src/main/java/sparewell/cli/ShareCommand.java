package sparewell.cli;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import sparewell.run.ClubReport;
import sparewell.run.ExitCode;
import sparewell.run.Outcome;
import sparewell.run.ShareRun;

/** Puts what logs say of rates into a file that others may have. */
final class ShareCommand extends Command {
  ShareCommand(Console console) {
    super(console, "share");
  }

  @Override
  public Integer call() {
    Path file = value("--to");
    if (file == null) {
      throw wrong("Say where to put it: --to FILE.csv.");
    }
    Path club = value("--report");
    if (club != null && !club.toString().toLowerCase(java.util.Locale.ROOT).endsWith(".xlsx")) {
      throw wrong("--report makes a workbook: its name must end in .xlsx: " + club);
    }
    List<Path> found = Books.expand(value("BOOK"), this);
    boolean silent = value("--quiet");
    LocalDateTime now = LocalDateTime.now();
    ShareRun.Result result;
    try (Watch watch = new Watch(console, found.size(), silent)) {
      result = ShareRun.share(found, file, now.toLocalDate(), watch::report);
    }
    int worst = result.outcomes().stream().mapToInt(Outcome::exitCode).max().orElse(ExitCode.DONE);
    if (result.fault().isPresent()) {
      console.complain(result.fault().get());
      return ExitCode.REFUSED;
    }
    say(silent, result, file);
    if (club != null) {
      Outcome written = ClubReport.write(club, result.rows(), now);
      Books.report(console, silent, written);
      worst = Math.max(worst, written.exitCode());
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
