package sparewell.run;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ForkJoinPool;
import java.util.function.Predicate;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.finding.Severity;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.render.RenderOptions;
import sparewell.render.SheetRenderer;
import sparewell.save.OwnParts;
import sparewell.save.OwnSheet;
import sparewell.save.OwnSheetNames;
import sparewell.save.WorkbookSaver;
import sparewell.save.file.Refusals;
import sparewell.season.Settings;
import sparewell.sheet.ReportSheets;
import sparewell.sheet.ReportSheets.Report;
import sparewell.sheet.Results;
import sparewell.sheet.Typed;
import sparewell.workbook.read.UnusableInput;

/** The work on one workbook: read, analyse, render, save. */
final class BookRun {
  private BookRun() {}

  /** Analyses a workbook, writes our sheets into it and the CSV files into a folder. */
  static Outcome analyse(Path book, Path folder, RunOptions options) {
    try (WorkbookPackage original = WorkbookPackage.open(book)) {
      Path target = options.out().orElse(book);
      if (Files.isDirectory(target)) {
        String reason =
            "--out %s is a folder. Name the workbook to write in it, such as --out %s. Nothing was written."
                .formatted(target, target.resolve(book.getFileName()));
        return Outcome.refused(book, reason, List.of(reason));
      }
      return written(original, original, target, typed(original), folder, options);
    } catch (UnusableInput unusable) {
      return unusable(book, unusable);
    } catch (WorkbookRefused refused) {
      return Outcome.refused(book, refused, true);
    } catch (IOException disk) {
      return Outcome.refused(
          book,
          disk(folder, disk)
              + " The workbook is as it was. Check the folder and the space on the disk, or give"
              + " another folder with --reports.");
    }
  }

  /**
   * Analyses an opened workbook, writes it with our sheets and the CSV files.
   *
   * @param read the workbook to analyse
   * @param standing the workbook as it stands, with the sheets that the last run left
   * @param target the file to write, that of {@code standing} or another
   * @param typed what was typed into our sheets
   */
  static Outcome written(
      WorkbookPackage read,
      WorkbookPackage standing,
      Path target,
      Beside.Work<Typed, WorkbookRefused> typed,
      Path folder,
      RunOptions options)
      throws UnusableInput, WorkbookRefused, IOException {
    WorkbookSaver.check(standing, target, options.dropSignature());
    Map<String, String> names = names(read, ReportSheets.names());
    Beside.Work<OwnParts, WorkbookRefused> parts =
        Beside.begin(() -> parts(read, ReportSheets.names(), names, ReportSheets.FRONT::equals));
    Report report =
        ReportSheets.of(Analysis.of(read, standing, typed, options, alreadyFound(read, names)));
    Results results = report.results();
    Settings settings = results.season().settings();
    ReportFolder.prepare(folder); // what cannot end well is not begun
    Beside.Work<Map<String, String>, RuntimeException> files =
        Beside.begin(() -> ReportFolder.texts(report.sheets(), settings.units()));
    RenderOptions rendering =
        new RenderOptions(
            settings.asOf().toString(),
            target.getFileName().toString(),
            settings.currency(),
            read.date1904(),
            names);
    SheetRenderer.render(
        report.sheets(), settings.units(), rendering, parts.get(), ForkJoinPool.commonPool());
    Optional<Path> backup =
        WorkbookSaver.save(
            parts.get(),
            standing,
            target,
            options.now(),
            options.backupsKept(),
            options.dropSignature());
    try {
      List<String> taken = ReportFolder.write(folder, files.get());
      return new Outcome(
          standing.file(),
          exitCode(results, options),
          Summary.inShort(results, report.toDo()),
          Summary.of(report, target, backup, folder, options.columns()),
          taken);
    } catch (IOException disk) {
      return Outcome.refused(
          standing.file(),
          disk(folder, disk)
              + " The workbook itself was written. Check the folder and the space on the disk,"
              + " and run again.");
    }
  }

  /** Analyses a workbook and reports its findings; writes nothing. */
  static Outcome check(Path book, RunOptions options) {
    try (WorkbookPackage original = WorkbookPackage.open(book)) {
      Results results =
          ReportSheets.of(
                  Analysis.of(
                      original,
                      original,
                      typed(original),
                      options,
                      renamed(names(original, ReportSheets.names()))))
              .results();
      return new Outcome(
          book,
          exitCode(results, options),
          Summary.counts(results.findings()),
          Summary.ofFindings(book, results),
          List.of());
    } catch (UnusableInput unusable) {
      return unusable(book, unusable);
    } catch (WorkbookRefused refused) {
      return Outcome.refused(book, refused, false);
    }
  }

  private static Beside.Work<Typed, WorkbookRefused> typed(WorkbookPackage book) {
    return Beside.begin(() -> OwnSheetReader.typed(book));
  }

  /** Our sheets' names in this workbook, where a sheet of the angler's has the usual one. */
  static Map<String, String> names(WorkbookPackage book, List<String> wanted) {
    List<String> actual = OwnSheetNames.resolve(book, wanted);
    Map<String, String> names = new LinkedHashMap<>();
    for (int i = 0; i < wanted.size(); i++) {
      if (!wanted.get(i).equals(actual.get(i))) {
        names.put(wanted.get(i), actual.get(i));
      }
    }
    return names;
  }

  /** What our sheets are put together from; those in {@code front} stand before the angler's. */
  static OwnParts parts(
      WorkbookPackage book, List<String> sheets, Map<String, String> names, Predicate<String> front)
      throws WorkbookRefused {
    return OwnParts.of(
        book,
        sheets.stream()
            .map(name -> new OwnSheet(names.getOrDefault(name, name), front.test(name)))
            .toList());
  }

  private static List<Finding> alreadyFound(WorkbookPackage original, Map<String, String> names) {
    List<Finding> found = new ArrayList<>(renamed(names));
    if (original.signed()) {
      found.add(Finding.of(Code.SIGNATURE_DROPPED, Cell.ofSheet("")));
    }
    return found;
  }

  private static List<Finding> renamed(Map<String, String> names) {
    return names.entrySet().stream()
        .map(
            name ->
                Finding.of(
                    Code.SHEET_NAME_TAKEN,
                    Cell.ofSheet(name.getKey()),
                    name.getKey(),
                    name.getValue()))
        .toList();
  }

  private static int exitCode(Results results, RunOptions options) {
    boolean errors = results.findings().stream().anyMatch(f -> f.severity() == Severity.ERROR);
    return options.strict() && errors ? ExitCode.FINDINGS : ExitCode.DONE;
  }

  static Outcome unusable(Path book, UnusableInput unusable) {
    if (unusable.faults().size() == 1) {
      String why = "cannot be analysed yet. " + unusable.faults().get(0);
      return Outcome.refused(book, why, List.of(book + " " + why));
    }
    String why = "cannot be analysed yet; it is left as it was:";
    return Outcome.refused(book, why, book + " " + why, unusable.faults());
  }

  private static String disk(Path folder, IOException failure) {
    String reason =
        failure instanceof FileAlreadyExistsException
            ? "a file of that name is in the way"
            : Refusals.of(folder, failure).problem();
    return "the CSV files cannot be written into " + folder + " (" + reason + ").";
  }
}
