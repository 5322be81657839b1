package sparewell.run;

import java.util.concurrent.Callable;
import java.util.concurrent.ForkJoinTask;
import java.util.function.Supplier;

/** Work on one workbook that two threads may share. */
final class Beside {
  private Beside() {}

  /**
   * Begins work that another thread may do meanwhile. Among several workbooks each keeps to its
   * thread, so that no more of them are in memory than there are threads.
   *
   * @return its result, waited for when asked for
   */
  static <T> Supplier<T> begin(Callable<T> work) {
    ForkJoinTask<T> task = ForkJoinTask.adapt(work);
    return ForkJoinTask.inForkJoinPool() ? task::invoke : task.fork()::join;
  }
}
