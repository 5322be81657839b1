package sparewell.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import sparewell.run.Batch;
import sparewell.run.ExitCode;
import sparewell.run.Outcome;
import sparewell.run.Rehearsal;
import sparewell.run.RunOptions;
import sparewell.run.SavedBooks;

/** Analyses the workbooks of a folder whenever one was saved and closed, until stopped. */
final class WatchCommand extends Command {
  private static final long ROUND_MILLIS = 1000;
  private static final long LONGEST_RUN_SECONDS = 120;
  private static final DateTimeFormatter CLOCK =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

  private final CountDownLatch stop = new CountDownLatch(1);
  private final CountDownLatch ended = new CountDownLatch(1);

  WatchCommand(Console console) {
    super(console, "watch");
  }

  @Override
  public Integer call() throws InterruptedException {
    Path watched = value("FOLDER");
    if (!Files.isDirectory(watched)) {
      throw wrong(watched + " is no folder.");
    }
    Runtime.getRuntime().addShutdownHook(new Thread(this::end, "end of watch"));
    try {
      SavedBooks saved = new SavedBooks(watched);
      console.say("Watching " + watched + ". Save and close a workbook to have it analysed.");
      saved.latest().ifPresent(book -> Rehearsal.of(book, options()));
      do {
        for (Path book : saved.due()) {
          console.say(analyse(book, saved));
        }
      } while (!stop.await(ROUND_MILLIS, TimeUnit.MILLISECONDS));
      return ExitCode.DONE;
    } catch (IOException unreadable) {
      console.complain("The folder " + watched + " cannot be read any more.");
      return ExitCode.REFUSED;
    } finally {
      ended.countDown();
    }
  }

  /** Ctrl-C: a run that has begun is finished first. */
  private void end() {
    stop.countDown();
    try {
      if (ended.await(LONGEST_RUN_SECONDS, TimeUnit.SECONDS)) {
        console.say("Stopped.");
      }
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
  }

  private String analyse(Path book, SavedBooks saved) {
    RunOptions options = options();
    Outcome outcome = Batch.analyse(List.of(book), options, done -> {}).get(0);
    saved.dealtWith(book, outcome.exitCode() != ExitCode.REFUSED);
    String result = outcome.exitCode() == ExitCode.REFUSED ? "refused: " : "";
    String time = LocalDateTime.now().format(CLOCK);
    return "%s %s: %s%s".formatted(time, book.getFileName(), result, outcome.inShort());
  }
}
