package sparewell.run;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.FutureTask;

/** Work on a workbook that another thread may take up. */
final class Beside {
  private Beside() {}

  /** Work, or the way to its result; it fails with faults of one kind. */
  @FunctionalInterface
  interface Work<T, E extends Exception> {
    T get() throws E;
  }

  /**
   * Offers work that another thread may do meanwhile; what nobody has begun when its result is
   * asked for is done then and there.
   *
   * @return its result, waited for when asked for
   */
  static <T, E extends Exception> Work<T, E> begin(Work<T, E> work) {
    FutureTask<T> task = new FutureTask<>(work::get);
    ForkJoinPool.commonPool().execute(task);
    return () -> {
      task.run(); // does nothing where it was begun
      return Beside.<T, E>result(task);
    };
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
