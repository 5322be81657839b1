package sparewell.run;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.FutureTask;

/** Work on one workbook that two threads may share. */
final class Beside {
  private Beside() {}

  /** Work, or the way to its result; it fails with faults of one kind. */
  @FunctionalInterface
  interface Work<T, E extends Exception> {
    T get() throws E;
  }

  /**
   * Offers work that another thread may do meanwhile; what nobody has begun when its result is
   * asked for is done then and there. Among several workbooks each keeps to its thread, so that no
   * more of them are in memory than there are threads.
   *
   * @return its result, waited for when asked for
   */
  static <T, E extends Exception> Work<T, E> begin(Work<T, E> work) {
    FutureTask<T> task = new FutureTask<>(work::get);
    if (!ForkJoinTask.inForkJoinPool()) {
      ForkJoinPool.commonPool().execute(task);
    }
    return () -> {
      task.run(); // does nothing where it was begun
      return Beside.<T, E>result(task);
    };
  }

  /** Executor for work that must be done: beside this thread where no other workbook needs it. */
  static Executor executor() {
    return ForkJoinTask.inForkJoinPool() ? Runnable::run : ForkJoinPool.commonPool();
  }

  @SuppressWarnings("unchecked") // work throws nothing else
  private static <T, E extends Exception> T result(FutureTask<T> task) throws E {
    try {
      return task.get();
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("stopped while working", stopped);
    } catch (ExecutionException failed) {
      if (failed.getCause() instanceof Error failure) {
        throw failure;
      }
      throw (E) failed.getCause();
    }
  }
}
