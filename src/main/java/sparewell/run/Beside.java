package sparewell.run;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;

/** Work on one workbook that two threads may share. */
final class Beside {
  private Beside() {}

  /**
   * Offers work that another thread may do meanwhile; what nobody has begun when its result is
   * asked for is done then and there. Among several workbooks each keeps to its thread, so that no
   * more of them are in memory than there are threads.
   *
   * @return its result, waited for when asked for
   */
  static <T> Supplier<T> begin(Supplier<T> work) {
    FutureTask<T> task = new FutureTask<>(work::get);
    if (!ForkJoinTask.inForkJoinPool()) {
      ForkJoinPool.commonPool().execute(task);
    }
    return () -> {
      task.run(); // does nothing where it was begun
      return result(task);
    };
  }

  /** Executor for work that must be done: beside this thread where no other workbook needs it. */
  static Executor executor() {
    return ForkJoinTask.inForkJoinPool() ? Runnable::run : ForkJoinPool.commonPool();
  }

  private static <T> T result(FutureTask<T> task) {
    try {
      return task.get();
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("stopped while working", stopped);
    } catch (ExecutionException failed) {
      if (failed.getCause() instanceof RuntimeException failure) {
        throw failure;
      }
      if (failed.getCause() instanceof Error failure) {
        throw failure;
      }
      throw new IllegalStateException(failed.getCause());
    }
  }
}
