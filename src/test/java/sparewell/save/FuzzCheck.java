package sparewell.save;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.Command;
import sparewell.ooxml.WorkbookPackage;
import sparewell.workbook.Books;

/**
 * Thousands of damaged workbooks in one process of 512 MiB: each is analysed, analysed with
 * findings, or refused with a message; nothing else escapes, none takes 10 s of work, and a refused
 * file keeps its bytes. Not in the usual test run: {@code mvn test -Pfuzz}; {@code -Dcases=N},
 * {@code -Dseed=N}.
 */
class FuzzCheck {
  private static final int CASES = Integer.getInteger("cases", 5_000);
  private static final long SEED = Long.getLong("seed", 20260308);

  private static final long CPU_SECONDS = 10;

  @TempDir private Path folder;

  /** Runs the whole command; how it ended in one word. */
  private static String analyse(Path book, Path reports, List<String> messages) {
    Command run = Command.run("analyse", book, "--reports", reports, "--as-of", "2026-03-15");
    messages.addAll(run.error().lines().toList());
    return switch (run.exitCode()) {
      case 0 -> run.out().contains("Findings: 0 errors, 0 warnings") ? "analysed" : "findings";
      case 3 -> "refused";
      default -> throw new AssertionError("exit code " + run.exitCode() + ": " + run.error());
    };
  }

  @Test
  void everyDamagedWorkbookIsAnalysedOrRefused() throws Exception {
    List<byte[]> good = new ArrayList<>();
    for (String name : List.of("demo.xlsx", "demo-metric.xlsx", "blank-us.xlsx")) {
      good.add(Files.readAllBytes(Path.of("workbook-templates", name)));
    }
    // Small ones outnumber the demos, so that thousands of whole runs take minutes, not an hour.
    Path small = Books.season().write(folder.resolve("small.xlsx"));
    for (int i = 0; i < 12; i++) {
      good.add(Files.readAllBytes(small));
    }
    Files.delete(small);
    Path reports = folder.resolve("reports");
    for (String name : Workbooks.NAMES) {
      good.add(Workbooks.bytes(name));
    }
    Path run = Files.write(folder.resolve("again.xlsx"), good.get(0));
    Saving.into(run);
    good.add(Files.readAllBytes(run)); // with our sheets in it
    Map<String, Integer> ends = new TreeMap<>();
    AtomicReference<Thread> thread = new AtomicReference<>();
    ExecutorService worker = Executors.newSingleThreadExecutor();
    worker.submit(() -> thread.set(Thread.currentThread())).get();
    long slowest = 0;
    for (int n = 0; n < CASES; n++) {
      byte[] damaged = new Damage(SEED + n).of(good.get(n % good.size()));
      Path place = Files.createDirectory(folder.resolve("case"));
      Path book = Files.write(place.resolve("season.xlsx"), damaged);
      List<String> messages = new ArrayList<>();
      long start = System.nanoTime();
      Future<String> end = worker.submit(() -> analyse(book, reports, messages));
      try {
        String how = within(end, thread.get(), CPU_SECONDS);
        ends.merge(how, 1, Integer::sum);
        slowest = Math.max(slowest, System.nanoTime() - start);
        judge(n, how, damaged, book, messages);
      } catch (TimeoutException e) {
        keep(n, damaged);
        fail("case " + n + " " + e.getMessage());
      } catch (java.util.concurrent.ExecutionException e) {
        keep(n, damaged);
        throw new AssertionError("case " + n, e.getCause());
      }
      delete(place);
    }
    worker.shutdown();
    delete(reports);
    System.out.printf(
        "%d cases from seed %d: %s, slowest %d ms%n", CASES, SEED, ends, slowest / 1_000_000);
    assertTrue(ends.getOrDefault("refused", 0) > CASES / 20, "damage was done: " + ends);
    assertTrue(ends.getOrDefault("findings", 0) > CASES / 20, "not all was damaged: " + ends);
  }

  /** Waits; time is the worker's own, so that a busy machine is no hang, and a stop is one. */
  private static String within(Future<String> end, Thread worker, long seconds) throws Exception {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    long start = threads.getThreadCpuTime(worker.getId());
    for (int waited = 0; waited < 30 * seconds; waited++) {
      try {
        return end.get(1, TimeUnit.SECONDS);
      } catch (TimeoutException e) {
        if (threads.getThreadCpuTime(worker.getId()) - start > seconds * 1_000_000_000) {
          throw new TimeoutException("takes more than " + seconds + " s");
        }
      }
    }
    throw new TimeoutException("stands still");
  }

  private static void judge(int n, String how, byte[] damaged, Path book, List<String> messages)
      throws Exception {
    if (how.equals("refused")) {
      assertArrayEquals(damaged, Files.readAllBytes(book), "case " + n + " changed a refused file");
      assertFalse(messages.isEmpty(), "case " + n + " says nothing");
      try (Stream<Path> beside = Files.list(book.getParent())) {
        assertEquals(1, beside.count(), "case " + n + " left something behind");
      }
    } else {
      try (WorkbookPackage saved = WorkbookPackage.open(book)) {
        assertTrue(saved.sheets().stream().anyMatch(s -> s.own()), "case " + n);
      }
    }
    for (String message : messages) {
      assertFalse(message.contains("Exception") || message.contains("java."), n + ": " + message);
    }
  }

  private static void keep(int n, byte[] damaged) throws IOException {
    Files.write(Path.of("target", "fuzz-case-" + n + ".xlsx"), damaged);
  }

  private static void delete(Path place) throws IOException {
    try (Stream<Path> all = Files.walk(place)) {
      for (Path path : all.sorted(java.util.Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
