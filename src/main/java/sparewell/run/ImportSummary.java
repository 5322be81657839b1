package sparewell.run;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sparewell.workbook.importing.SheetPlan;
import sparewell.workbook.importing.SheetPlan.Rejected;

/** Words printed about an import. */
final class ImportSummary {
  private static final int MOST_ROWS = 10;
  private static final int MOST_NOTES = 10;
  private static final int MOST_REJECTED = 20;

  private ImportSummary() {}

  static List<String> dry(List<SheetPlan> plans) {
    List<String> lines = new ArrayList<>();
    for (SheetPlan plan : plans) {
      lines.add(counts(plan, "would be added", "there already", "would be rejected"));
      plan.added().stream()
          .limit(MOST_ROWS)
          .forEach(row -> lines.add("  line " + row.line() + ": " + row.shown()));
      if (plan.added().size() > MOST_ROWS) {
        lines.add("  … and " + (plan.added().size() - MOST_ROWS) + " more");
      }
      notes(plan, lines);
    }
    loud(plans, "would be left out", lines);
    lines.add("Dry run: nothing was written.");
    return lines;
  }

  static List<String> done(
      Path book, List<SheetPlan> plans, Optional<Path> backup, List<Path> rejected) {
    List<String> lines = new ArrayList<>();
    for (SheetPlan plan : plans) {
      lines.add(counts(plan, "added", "there already", "rejected"));
      notes(plan, lines);
    }
    loud(plans, "WERE LEFT OUT", lines);
    if (backup.isPresent()) {
      lines.add("Written: " + book + ".");
      lines.add("Backup of what it was: " + backup.get() + ".");
    } else {
      lines.add("Nothing to add: the workbook is as it was.");
    }
    rejected.forEach(
        file -> lines.add("Rejected rows: " + file + ". Mend them there and import that file."));
    backup.ifPresent(written -> lines.add("Next: sparewell analyse " + book));
    return lines;
  }

  /** Rejected rows do not show in the exit code, so they must in the text. */
  private static void loud(List<SheetPlan> plans, String left, List<String> lines) {
    int rejected = plans.stream().mapToInt(plan -> plan.rejected().size()).sum();
    if (rejected > 0) {
      int all = rejected + plans.stream().mapToInt(p -> p.added().size() + p.known()).sum();
      lines.add(
          "ATTENTION: %s of %s rows %s; each is named with its reason."
              .formatted(rejected, all, left));
    }
  }

  private static String counts(SheetPlan plan, String added, String known, String rejected) {
    int rows = plan.added().size();
    return "%s: %s %s %s from %s"
            .formatted(plan.sheetName(), rows, rows == 1 ? "row" : "rows", added, plan.file())
        + (plan.known() == 0
            ? ""
            : "; " + plan.known() + (plan.known() == 1 ? " was " : " were ") + known)
        + (plan.rejected().isEmpty() ? "" : "; " + plan.rejected().size() + " " + rejected)
        + ".";
  }

  private static void notes(SheetPlan plan, List<String> lines) {
    plan.notes().stream().limit(MOST_NOTES).forEach(note -> lines.add("  " + note));
    if (plan.notes().size() > MOST_NOTES) {
      lines.add("  … and " + (plan.notes().size() - MOST_NOTES) + " remarks more");
    }
  }

  /** Files none of whose rows can be taken, each row with its reason. */
  static List<String> useless(List<SheetPlan> plans) {
    List<String> lines = new ArrayList<>();
    for (SheetPlan plan : plans) {
      if (plan.added().isEmpty() && plan.known() == 0 && !plan.rejected().isEmpty()) {
        lines.add("No row of " + plan.file() + " can be taken.");
        lines.addAll(problems(List.of(plan)));
      }
    }
    return lines;
  }

  static List<String> problems(List<SheetPlan> plans) {
    List<String> lines = new ArrayList<>();
    for (SheetPlan plan : plans) {
      for (Rejected row : plan.rejected().stream().limit(MOST_REJECTED).toList()) {
        lines.add(plan.file() + " line " + row.line() + " rejected: " + row.reason());
      }
      if (plan.rejected().size() > MOST_REJECTED) {
        lines.add(
            plan.file() + ": " + (plan.rejected().size() - MOST_REJECTED) + " more rows rejected.");
      }
    }
    return lines;
  }
}
