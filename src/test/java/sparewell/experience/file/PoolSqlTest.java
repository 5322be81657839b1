package sparewell.experience.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.experience.Entry;
import sparewell.experience.Key;
import sparewell.experience.Kind;
import sparewell.experience.Pool;
import sparewell.experience.Unit;
import sparewell.workbook.value.Names;

/** The statement that src/doc/experience.md shows, run by H2 2.3.232, against our own pool. */
class PoolSqlTest {
  @TempDir private Path folder;

  private static String statement() throws java.io.IOException {
    String guide = Files.readString(Path.of("src/doc/experience.md"));
    int from = guide.indexOf("```sql") + 6;
    return guide.substring(from, guide.indexOf("```", from));
  }

  private static String id(int number) {
    return String.format(Locale.ROOT, "%032x", number);
  }

  /** Logs given twice, later states, copies under another id, spellings of one name. */
  private static List<Entry> rows() {
    Random random = new Random(20260511);
    String[] names = {"Football jig", "football  JIG", "Shad - small", "shad small", "Blade 3/8"};
    List<Entry> rows = new ArrayList<>();
    for (int i = 0; i < 600; i++) {
      int log = random.nextInt(40);
      String name = names[random.nextInt(names.length)];
      boolean cover = random.nextInt(4) == 0;
      rows.add(
          new Entry(
              id(log),
              id(log % 9 == 0 ? 7 : 100 + 2 * log + random.nextInt(2)),
              2020 + random.nextInt(5),
              new Key(
                  cover ? Kind.COVER : Kind.STYLE,
                  cover ? Unit.TIMES : Unit.PIECES_PER_HOUR_THROWN,
                  Names.fold(name)),
              name,
              "",
              "",
              Math.round(1e6 * (random.nextGaussian() - 1)) / 1e6,
              Math.round(1e6 * (0.01 + 1.5 * random.nextDouble())) / 1e6,
              1 + random.nextInt(5),
              random.nextInt(100) / 4.0,
              random.nextInt(9)));
    }
    return rows;
  }

  @Test
  void anyEngineBuildsTheSamePool() throws Exception {
    List<Entry> rows = rows();
    Path file = folder.resolve("experience.csv");
    Files.writeString(file, ExperienceFile.text(rows));
    TreeSet<String> ours = new TreeSet<>();
    Pool.of(rows).cells().forEach((key, cells) -> cells.forEach(cell -> ours.add(line(key, cell))));
    TreeSet<String> theirs = new TreeSet<>();
    try (Connection h2 = DriverManager.getConnection("jdbc:h2:mem:");
        Statement sql = h2.createStatement()) {
      sql.execute(
          "CREATE TABLE experience(log_id VARCHAR, fingerprint VARCHAR, last_year INT, kind VARCHAR,"
              + " unit VARCHAR, name VARCHAR, family VARCHAR, ln_estimate DOUBLE PRECISION,"
              + " ln_variance DOUBLE PRECISION, trips INT, hours DOUBLE PRECISION, pieces INT)"
              + " AS SELECT * FROM CSVREAD('"
              + file
              + "')");
      try (ResultSet found = sql.executeQuery(statement())) {
        while (found.next()) {
          theirs.add(
              line(
                  new Key(
                      Kind.valueOf(found.getString("kind").toUpperCase(java.util.Locale.ROOT)),
                      Unit.valueOf(found.getString("unit").toUpperCase(java.util.Locale.ROOT)),
                      found.getString("thing")),
                  new Pool.Cell(
                      found.getLong("logs"),
                      found.getDouble("estimates"),
                      found.getDouble("precisions"),
                      found.getLong("trips"),
                      found.getDouble("hours"),
                      found.getLong("pieces"))));
        }
      }
    }
    assertTrue(ours.size() > 60, "only " + ours.size() + " cells");
    assertEquals(ours, theirs);
  }

  private static String line(Key key, Pool.Cell cell) {
    return String.format(
        Locale.ROOT,
        "%s %s %s: %d logs %.9f %.9f %d %.4f %d",
        key.kind(),
        key.unit(),
        key.name(),
        cell.logs(),
        cell.estimates() + 0.0,
        cell.precisions(),
        cell.trips(),
        cell.hours(),
        cell.pieces());
  }
}
