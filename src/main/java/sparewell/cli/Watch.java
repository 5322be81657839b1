package sparewell.cli;

import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/** Shows progress of work that takes more than a second, on an interactive terminal. */
final class Watch implements AutoCloseable {
  private static final long FIRST_MILLIS = 1000;
  private static final long NEXT_MILLIS = 500;

  private final Console console;
  private final int all;
  private final AtomicInteger done = new AtomicInteger();
  private final ScheduledExecutorService clock =
      Executors.newSingleThreadScheduledExecutor(
          work -> {
            Thread thread = new Thread(work, "progress");
            thread.setDaemon(true);
            return thread;
          });
  private int ticks;

  /** Watches work on a number of workbooks; {@code quiet} shows nothing. */
  Watch(Console console, int all, boolean quiet) {
    this.console = console;
    this.all = all;
    if (!quiet && console.watched()) {
      clock.scheduleWithFixedDelay(this::show, FIRST_MILLIS, NEXT_MILLIS, TimeUnit.MILLISECONDS);
    }
  }

  /** Notes the number of workbooks done. */
  void report(int doneNow) {
    done.accumulateAndGet(doneNow, Math::max);
  }

  private void show() {
    long seconds = (FIRST_MILLIS + ticks++ * NEXT_MILLIS) / 1000;
    console.progress(
        done.get(),
        all,
        all > 1 ? "workbooks, " + seconds + " s" : "Working ... " + seconds + " s");
  }

  @Override
  public void close() {
    clock.shutdownNow();
    try {
      boolean ended = clock.awaitTermination(1, TimeUnit.SECONDS);
      assert ended : "showing a line takes no time";
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
    console.clearProgress();
  }
}
