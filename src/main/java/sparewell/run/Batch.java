package sparewell.run;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/** Work on several workbooks at once, each judged alone. */
public final class Batch {
  /** Told how many workbooks are done. */
  @FunctionalInterface
  public interface Progress {
    /** Called after each workbook, from any thread. */
    void report(int done, int all);
  }

  @FunctionalInterface
  private interface Job {
    Outcome run(int index);
  }

  private Batch() {}

  /** Analyses each workbook and writes it; outcomes come in the order of the workbooks. */
  public static List<Outcome> analyse(List<Path> books, RunOptions options, Progress progress) {
    List<Path> folders = reportFolders(books, options.reports());
    return each(
        books, progress, index -> BookRun.analyse(books.get(index), folders.get(index), options));
  }

  /** Reads each workbook and tells its findings; writes nothing. */
  public static List<Outcome> check(List<Path> books, RunOptions options, Progress progress) {
    return each(books, progress, index -> BookRun.check(books.get(index), options));
  }

  /**
   * Folder for each workbook: its name without ending, with a number where two in one call share
   * it.
   */
  static List<Path> reportFolders(List<Path> books, Path reports) {
    Map<String, Integer> seen = new HashMap<>();
    List<Path> folders = new ArrayList<>();
    for (Path book : books) {
      String name = baseName(book);
      int times = seen.merge(name.toLowerCase(Locale.ROOT), 1, Integer::sum);
      folders.add(reports.resolve(times == 1 ? name : name + " (" + times + ")"));
    }
    return folders;
  }

  private static String baseName(Path book) {
    String name = book.getFileName().toString();
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }

  private static List<Outcome> each(List<Path> books, Progress progress, Job job) {
    // One workbook needs no thread of its own; many share the cores, so that memory stays bounded
    // by their number.
    int threads = Math.min(books.size(), Runtime.getRuntime().availableProcessors());
    AtomicInteger done = new AtomicInteger();
    if (threads <= 1) {
      List<Outcome> outcomes = new ArrayList<>();
      for (int i = 0; i < books.size(); i++) {
        outcomes.add(job.run(i));
        progress.report(done.incrementAndGet(), books.size());
      }
      return outcomes;
    }
    ExecutorService pool = new ForkJoinPool(threads);
    try {
      List<Future<Outcome>> waiting = new ArrayList<>();
      for (int i = 0; i < books.size(); i++) {
        int index = i;
        waiting.add(
            pool.submit(
                () -> {
                  Outcome outcome = job.run(index);
                  progress.report(done.incrementAndGet(), books.size());
                  return outcome;
                }));
      }
      List<Outcome> outcomes = new ArrayList<>();
      for (Future<Outcome> future : waiting) {
        outcomes.add(future.get());
      }
      return outcomes;
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("stopped while working", stopped);
    } catch (ExecutionException failed) {
      throw new IllegalStateException(failed.getCause());
    } finally {
      pool.shutdown();
    }
  }
}
