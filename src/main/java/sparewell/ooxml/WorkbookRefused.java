package sparewell.ooxml;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sparewell.declared.DeclaredTable;

/**
 * Refusal of a workbook that cannot be used or written. The file is unchanged; the message names
 * it, the problem and the remedy, in an angler's words, which stand in {@code refusals.txt} among
 * the resources.
 */
public final class WorkbookRefused extends Exception {
  private static final String UNCHANGED = " The workbook is as it was.";
  private static final Map<String, WorkbookRefused.Words> WORDS = new HashMap<>();

  static {
    Map<String, DeclaredTable> tables = DeclaredTable.read(WorkbookRefused.class, "refusals.txt");
    add(tables.get("reading"), "", false);
    add(tables.get("writing"), UNCHANGED, false);
    add(tables.get("writing here"), UNCHANGED, true);
  }

  private final String problem;
  private final String remedy;
  private final boolean elsewhere;

  private record Words(String problem, String remedy, boolean elsewhere) {}

  private static void add(DeclaredTable table, String end, boolean elsewhere) {
    for (List<String> row : table.rows()) {
      WORDS.put(row.get(0), new Words(row.get(1), row.get(2) + end, elsewhere));
    }
  }

  private WorkbookRefused(Path file, String problem, String remedy, boolean elsewhere) {
    super(file + ": " + problem + ". " + remedy);
    this.problem = problem;
    this.remedy = remedy;
    this.elsewhere = elsewhere;
  }

  /** A refusal by the problem's key in the list; the details fill the places in its words. */
  public static WorkbookRefused of(Path file, String key, Object... details) {
    Words words = WORDS.get(key);
    return new WorkbookRefused(
        file, words.problem.formatted(details), words.remedy.formatted(details), words.elsewhere);
  }

  public String problem() {
    return problem;
  }

  public String words() {
    return problem + ". " + remedy;
  }

  /** Returns whether writing to another file would do, for commands that can. */
  public boolean elsewhere() {
    return elsewhere;
  }
}
