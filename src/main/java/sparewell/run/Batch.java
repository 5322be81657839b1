package sparewell.run;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import sparewell.save.file.Replacement;

/** Work on several workbooks at once; a failure of one does not affect the others. */
public final class Batch {
  private Batch() {}

  /**
   * Analyses each workbook and writes it; outcomes come in the order of the workbooks.
   *
   * @param progress gets the number of workbooks done after each, from any thread
   */
  public static List<Outcome> analyse(List<Path> books, RunOptions options, IntConsumer progress) {
    List<Path> folders = reportFolders(books, options.reports());
    return each(
        books, progress, index -> BookRun.analyse(books.get(index), folders.get(index), options));
  }

  /** Reads each workbook and reports its findings; writes nothing. */
  public static List<Outcome> check(List<Path> books, RunOptions options, IntConsumer progress) {
    return each(books, progress, index -> BookRun.check(books.get(index), options));
  }

  /** Folder for each workbook: its name without ending, numbered where two share it. */
  static List<Path> reportFolders(List<Path> books, Path reports) {
    Set<String> taken = new HashSet<>();
    List<Path> folders = new ArrayList<>();
    for (Path book : books) {
      String whole = book.getFileName().toString();
      String name = whole.substring(0, whole.length() - Replacement.extension(whole).length());
      String free = name;
      for (int n = 2; !taken.add(free.toLowerCase(Locale.ROOT)); n++) {
        free = name + " (" + n + ")";
      }
      folders.add(reports.resolve(free));
    }
    return folders;
  }

  /** A fault of ours in one workbook must not cost the others their results. */
  private static Outcome alone(List<Path> books, int index, IntFunction<Outcome> job) {
    try {
      return job.apply(index);
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError failure) {
      return Outcome.refused(
          books.get(index),
          "something went wrong inside the program ("
              + failure.getClass().getSimpleName()
              + (failure.getMessage() == null ? "" : ": " + failure.getMessage())
              + "). The workbook is whole. Please report this message.");
    }
  }

  static List<Outcome> each(List<Path> books, IntConsumer progress, IntFunction<Outcome> job) {
    AtomicInteger done = new AtomicInteger();
    IntFunction<Outcome> work =
        index -> {
          Outcome outcome = alone(books, index, job);
          progress.accept(done.incrementAndGet());
          return outcome;
        };
    IntStream all = IntStream.range(0, books.size());
    // One workbook needs no thread of its own; many share the cores, so that memory stays bounded
    // by their number.
    int threads = Math.min(books.size(), Runtime.getRuntime().availableProcessors());
    if (threads <= 1) {
      return all.mapToObj(work).toList();
    }
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      return all
          .mapToObj(index -> CompletableFuture.supplyAsync(() -> work.apply(index), pool))
          .toList()
          .stream()
          .map(CompletableFuture::join)
          .toList();
    } finally {
      pool.shutdown();
    }
  }
}
