package sparewell.cli;

import java.util.Timer;
import java.util.TimerTask;

/** Shows progress of work that takes more than a second, on an interactive terminal. */
final class Watch implements AutoCloseable {
  private static final long FIRST_MILLIS = 1000;
  private static final long NEXT_MILLIS = 500;

  private final Console console;
  private final int all;
  private int done;
  private final Timer clock = new Timer("progress", true);
  private boolean closed;
  private int ticks;

  /** Watches work on a number of workbooks; {@code quiet} shows nothing. */
  Watch(Console console, int all, boolean quiet) {
    this.console = console;
    this.all = all;
    if (!quiet && console.watched) {
      TimerTask show =
          new TimerTask() {
            @Override
            public void run() {
              show();
            }
          };
      clock.schedule(show, FIRST_MILLIS, NEXT_MILLIS);
    }
  }

  synchronized void report(int doneNow) {
    done = Math.max(done, doneNow);
  }

  private synchronized void show() {
    long seconds = (FIRST_MILLIS + ticks++ * NEXT_MILLIS) / 1000;
    String what = all > 1 ? "workbooks, " + seconds + " s" : "Working ... " + seconds + " s";
    if (!closed) {
      console.progress(done, all, what);
    }
  }

  @Override
  public synchronized void close() {
    closed = true;
    clock.cancel();
    console.clearProgress();
  }
}
