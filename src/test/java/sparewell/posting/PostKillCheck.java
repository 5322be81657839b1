package sparewell.posting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.Command;
import sparewell.Ticking;
import sparewell.run.PostRun;
import sparewell.save.Programs;
import sparewell.workbook.Beginner;
import sparewell.workbook.OpenBook;

/**
 * Kills a posting (SIGKILL) at random moments: each tick is in the ledgers once or not at all, the
 * workbook is whole, and posting again makes up for it. Not in the usual test run: {@code mvn test
 * -Pkill}; {@code -Dkills=N} for another number, {@code -Dseed} for other moments.
 */
class PostKillCheck {
  private static final int KILLS = Integer.getInteger("kills", 200);
  private static final long SEED = Long.getLong("seed", 20260315);

  @TempDir private Path folder;

  @Test
  void eachTickIsPostedOnceOrNotAtAll() throws Exception {
    Path ticked = ticked();
    Path book = folder.resolve("season.xlsx");
    Files.copy(ticked, book);
    long began = System.nanoTime();
    kill(book, Long.MAX_VALUE);
    long whole = (System.nanoTime() - began) / 1_000;
    int wanted = rows(book);
    assertTrue(wanted > 3, wanted + " rows posted");
    Random random = new Random(SEED);
    Map<String, Integer> seen = new TreeMap<>();
    for (int n = 0; n < KILLS; n++) {
      Files.copy(ticked, book, StandardCopyOption.REPLACE_EXISTING);
      kill(book, (long) (whole * share(n, random)));
      int posted = rows(book);
      boolean blank = Ticking.typed(book, "Buy list", "Done").isEmpty();
      assertEquals(posted == 0 ? 0 : wanted, posted, "kill " + n);
      assertEquals(posted > 0, blank, "kill " + n + ": ticks go with their rows");
      seen.merge(posted > 0 ? "posted" : "not yet", 1, Integer::sum);
      if (leftovers()) {
        seen.merge("with leftovers", 1, Integer::sum);
      }
      PostRun.run(book, Optional.empty(), false, KilledPost.options(reports()));
      assertEquals(wanted, rows(book), "kill " + n + ": posted again");
    }
    System.out.println(KILLS + " kills of a posting from seed " + SEED + ": " + seen);
    assertTrue(seen.size() >= 2, "kills fell before and after the saving: " + seen);
  }

  /**
   * Moment of the kill, as a share of a whole run: spread evenly, every second one over the last
   * third and a little beyond, where the workbook is written.
   */
  private static double share(int n, Random random) {
    double at = (n + random.nextDouble()) / KILLS;
    return n % 2 == 0 ? at : 0.67 + 0.43 * at;
  }

  private boolean leftovers() throws Exception {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.anyMatch(path -> path.getFileName().toString().endsWith(".tmp"));
    }
  }

  private String reports() {
    return folder.resolve("reports").toString();
  }

  private Path ticked() throws Exception {
    Path book = folder.resolve("ticked.xlsx");
    Beginner.write(book);
    assertEquals(0, Command.run("analyse", book, "--reports", reports()).exitCode());
    Ticking.edit(
        book,
        open -> {
          Ticking.type(open, "Spares", "Done", line -> "yes");
          Ticking.type(open, "Buy list", "Done", line -> "yes");
          Ticking.type(open, "Stow plan", "Done", line -> "yes");
        });
    return book;
  }

  /** Rows in the ledgers. */
  private static int rows(Path file) {
    OpenBook book = OpenBook.of(file);
    int rows = 0;
    for (String ledger : List.of("Transfers", "Restocks", "Box log")) {
      if (book.sheets().contains(ledger)) {
        rows +=
            (int) book.rows(ledger).stream().skip(1).filter(row -> !row.text(1).isEmpty()).count();
      }
    }
    return rows;
  }

  private void kill(Path book, long afterMicros) throws Exception {
    Process run = Programs.java(KilledPost.class, List.of(), book, reports());
    try (BufferedReader out =
        new BufferedReader(new InputStreamReader(run.getInputStream(), StandardCharsets.UTF_8))) {
      assertEquals("began", out.readLine());
      if (afterMicros == Long.MAX_VALUE) {
        run.waitFor();
      } else {
        run.waitFor(afterMicros, TimeUnit.MICROSECONDS);
      }
      run.destroyForcibly().waitFor();
    }
  }
}
