package sparewell.run;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.save.WorkbookSaver;
import sparewell.save.append.AppendRequest;
import sparewell.workbook.DateOrder;
import sparewell.workbook.grid.BookCells;
import sparewell.workbook.importing.ImportPlanner;
import sparewell.workbook.importing.ImportProof;
import sparewell.workbook.importing.ImportSource;
import sparewell.workbook.importing.RejectedFile;
import sparewell.workbook.importing.SheetPlan;
import sparewell.workbook.read.UnusableInput;

/** Adds rows of CSV files to the angler's input sheets. */
public final class ImportRun {
  private ImportRun() {}

  /** Imports files; nothing is written unless every file and sheet can be used. */
  public static Outcome run(
      Path book,
      List<ImportSource> sources,
      Optional<DateOrder> order,
      boolean dryRun,
      LocalDateTime now,
      int backupsKept) {
    try (WorkbookPackage original = WorkbookPackage.open(book)) {
      List<SheetPlan> plans = ImportPlanner.plan(original, sources, now.toLocalDate(), order);
      List<String> useless = ImportSummary.useless(plans);
      if (!useless.isEmpty()) {
        return refusal(book, useless);
      }
      return dryRun
          ? new Outcome(
              book,
              ExitCode.DONE,
              "nothing written",
              ImportSummary.dry(plans),
              ImportSummary.problems(plans))
          : write(original, plans, now, backupsKept);
    } catch (UnusableInput unusable) {
      return refusal(book, unusable.faults());
    } catch (WorkbookRefused refused) {
      return Outcome.refused(book, refused, false);
    }
  }

  private static Outcome write(
      WorkbookPackage original, List<SheetPlan> plans, LocalDateTime now, int backupsKept)
      throws WorkbookRefused {
    Path book = original.file();
    List<SheetPlan> adding = plans.stream().filter(plan -> !plan.added().isEmpty()).toList();
    if (!adding.isEmpty()) {
      WorkbookSaver.check(original, book, false);
    }
    List<Path> rejected = new ArrayList<>();
    for (SheetPlan plan : plans) {
      if (!plan.rejected().isEmpty()) {
        try {
          rejected.add(RejectedFile.write(plan));
        } catch (IOException disk) {
          return Outcome.refused(
              book,
              "the rejected rows of "
                  + plan.file()
                  + " could not be written beside it. Check the folder and the space on the"
                  + " disk. Nothing was imported; the workbook is as it was.");
        }
      }
    }
    Optional<Path> backup =
        adding.isEmpty()
            ? Optional.empty()
            : WorkbookSaver.append(request(original, adding, now, backupsKept));
    return new Outcome(
        book,
        ExitCode.DONE,
        "imported",
        ImportSummary.done(book, plans, backup, rejected),
        ImportSummary.problems(plans));
  }

  static AppendRequest request(
      WorkbookPackage original, List<SheetPlan> plans, LocalDateTime now, int backupsKept)
      throws WorkbookRefused {
    return new AppendRequest(
        original,
        plans.stream().map(SheetPlan::rows).toList(),
        BookCells.of(original)::showsDates,
        written -> proven(original, written, plans),
        now,
        backupsKept);
  }

  private static boolean proven(
      WorkbookPackage original, WorkbookPackage written, List<SheetPlan> plans)
      throws WorkbookRefused {
    for (SheetPlan plan : plans) {
      if (!ImportProof.holds(original, written, plan.rows())) {
        return false;
      }
    }
    return true;
  }

  private static Outcome refusal(Path book, List<String> faults) {
    return Outcome.refused(
        book, "nothing was imported", "Nothing was imported; " + book + " is as it was:", faults);
  }
}
