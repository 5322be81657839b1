package sparewell.save;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.ooxml.Fingerprint;

/**
 * Kills a run (SIGKILL) at random moments: the workbook is always one of the whole ones, so is
 * every backup, and the next run works and clears the leftovers. Not in the usual test run: {@code
 * mvn test -Pkill}; {@code -Dkills=N} for another number.
 */
class KillCheck {
  private static final int KILLS = Integer.getInteger("kills", 220);

  @TempDir private Path folder;

  @Test
  void theOldOrTheNewWorkbookStandsThereWhole() throws Exception {
    Path book = Files.write(folder.resolve("season.xlsx"), Workbooks.bytes("office.xlsx"));
    String one = "one";
    String two = "two";
    Map<Fingerprint, String> whole = new HashMap<>();
    whole.put(Fingerprint.of(book), "before");
    KilledRun.save(book, one, 0);
    whole.put(Fingerprint.of(book), "one");
    KilledRun.save(book, two, 1);
    whole.put(Fingerprint.of(book), "two");
    assertEquals(3, whole.size());
    Random random = new Random(20260308);
    Map<String, Integer> seen = new TreeMap<>();
    for (int kill = 0; kill < KILLS; kill++) {
      killOne(book, one, two, random);
      String now = whole.get(Fingerprint.of(book));
      assertNotNull(now, "kill " + kill + " left something else");
      seen.merge(now, 1, Integer::sum);
      if (!leftovers().isEmpty()) {
        seen.merge("with leftovers", 1, Integer::sum);
      }
      try (Stream<Path> backups = Files.list(folder.resolve("season-backups"))) {
        for (Path backup :
            backups.filter(p -> !p.getFileName().toString().startsWith(".")).toList()) {
          assertNotNull(whole.get(Fingerprint.of(backup)), "kill " + kill + ": " + backup);
        }
      }
      KilledRun.save(book, now.equals("one") ? two : one, 100_000 + kill);
      assertEquals(List.of(), leftovers());
    }
    System.out.println(KILLS + " kills: " + seen);
    assertTrue(
        seen.getOrDefault("with leftovers", 0) > KILLS / 10, "kills fell into saves: " + seen);
  }

  private List<Path> leftovers() throws Exception {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(p -> p.getFileName().toString().endsWith(".tmp")).toList();
    }
  }

  private static void killOne(Path book, String one, String two, Random random) throws Exception {
    Process run = Programs.java(KilledRun.class, List.of(), book, one, two);
    try (BufferedReader out =
        new BufferedReader(new InputStreamReader(run.getInputStream(), StandardCharsets.UTF_8))) {
      assertEquals("saved", out.readLine());
      TimeUnit.MICROSECONDS.sleep(random.nextInt(150_000));
      run.destroyForcibly().waitFor();
    }
  }
}
