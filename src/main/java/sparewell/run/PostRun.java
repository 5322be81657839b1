package sparewell.run;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import sparewell.finding.Findings;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.posting.Poster;
import sparewell.posting.Posting;
import sparewell.posting.Posting.PostedRow;
import sparewell.save.WorkbookSaver;
import sparewell.season.Season;
import sparewell.season.SeasonOrder;
import sparewell.sheet.Typed;
import sparewell.workbook.InputColumn;
import sparewell.workbook.InputSheet;
import sparewell.workbook.importing.ImportPlanner;
import sparewell.workbook.importing.ImportSource;
import sparewell.workbook.importing.SheetPlan;
import sparewell.workbook.importing.SheetPlan.Rejected;
import sparewell.workbook.read.SeasonReader;
import sparewell.workbook.read.SheetChoice;
import sparewell.workbook.read.UnusableInput;

/**
 * Turns what was typed on our sheets into rows of the angler's, and analyses. The rows go into a
 * copy; the copy is analysed; the result takes the workbook's place in one step, with the rows and
 * without the ticks. So nothing is posted twice or lost, whenever the run ends.
 */
public final class PostRun {
  private final Path book;
  private final Path folder;
  private final RunOptions options;

  private PostRun(Path book, RunOptions options) {
    this.book = book;
    this.folder = Batch.reportFolders(List.of(book), options.reports()).get(0);
    this.options = options;
  }

  /** Posts; rows have the workbook's date of analysis where no date is given. */
  public static Outcome run(
      Path book, Optional<LocalDate> date, boolean dryRun, RunOptions options) {
    PostRun run = new PostRun(book, options);
    try (WorkbookPackage original = WorkbookPackage.open(book)) {
      return run.post(original, date, dryRun);
    } catch (UnusableInput unusable) {
      return run.refused(unusable.faults());
    } catch (WorkbookRefused refused) {
      return Outcome.refused(book, refused, false);
    } catch (IOException disk) {
      return run.refused(List.of("The CSV files cannot be written into " + run.folder + "."));
    }
  }

  private Outcome post(WorkbookPackage original, Optional<LocalDate> date, boolean dryRun)
      throws UnusableInput, WorkbookRefused, IOException {
    Typed typed = OwnSheetReader.typed(original);
    Season season = SeasonOrder.of(SeasonReader.read(original, options.reading()).season());
    LocalDate asOf = season.settings().asOf();
    LocalDate day = date.orElse(asOf);
    if (day.isAfter(asOf)) {
      return refused(
          List.of(
              "Rows of %s would not count: the workbook is analysed as of %s. Set or clear As of in"
                      .formatted(day, asOf)
                  + " Settings, or give an earlier --date."));
    }
    Posting posting = Poster.of(typed, season, day);
    if (!posting.faults().isEmpty()) {
      return refused(posting.faults());
    }
    if (dryRun || posting.rows().isEmpty()) {
      return Outcome.done(book, "nothing written", dry(posting));
    }
    WorkbookSaver.check(original, book, options.dropSignature());
    return write(original, posting, typed);
  }

  private Outcome write(WorkbookPackage original, Posting posting, Typed typed)
      throws UnusableInput, WorkbookRefused, IOException {
    List<InputSheet> missing = missing(original, posting);
    try (Scratch scratch = new Scratch(original)) {
      if (missing.isEmpty()) {
        return append(original, original, posting, typed, scratch);
      }
      Path grown = scratch.file();
      BlankSheets.add(original, missing, grown);
      try (WorkbookPackage whole = WorkbookPackage.open(grown)) {
        return append(original, whole, posting, typed, scratch);
      }
    }
  }

  private static List<InputSheet> missing(WorkbookPackage original, Posting posting) {
    SheetChoice sheets = SheetChoice.of(original.sheets(), new Findings());
    return ImportSource.SHEETS.stream()
        .filter(sheet -> !posting.of(sheet).isEmpty() && sheets.of(sheet).isEmpty())
        .toList();
  }

  private Outcome append(
      WorkbookPackage original,
      WorkbookPackage whole,
      Posting posting,
      Typed typed,
      Scratch scratch)
      throws UnusableInput, WorkbookRefused, IOException {
    List<ImportSource> sources = sources(posting);
    List<SheetPlan> plans =
        ImportPlanner.plan(whole, sources, options.now().toLocalDate(), Optional.empty());
    List<String> rejected = new ArrayList<>();
    for (int i = 0; i < plans.size(); i++) {
      List<PostedRow> rows = posting.of(sources.get(i).sheet());
      for (Rejected row : plans.get(i).rejected()) {
        rejected.add(row(rows.get((int) row.line() - 1)) + ": " + row.reason() + ".");
      }
    }
    if (!rejected.isEmpty()) {
      return refused(rejected);
    }
    Path filled = scratch.file();
    WorkbookSaver.copyWithRows(
        ImportRun.request(whole, plans, options.now(), options.backupsKept()), filled);
    Map<String, Integer> posted = new LinkedHashMap<>();
    plans.forEach(plan -> posted.put(plan.sheetName(), plan.added().size()));
    try (WorkbookPackage fresh = WorkbookPackage.open(filled)) {
      Typed left = typed.unposted(posted);
      Outcome analysed = BookRun.written(fresh, original, book, () -> left, folder, options);
      List<String> lines = new ArrayList<>(List.of(posted(posted)));
      lines.addAll(analysed.summary());
      return new Outcome(book, analysed.exitCode(), analysed.inShort(), lines, analysed.problems());
    }
  }

  private static List<ImportSource> sources(Posting posting) {
    return ImportSource.SHEETS.stream()
        .filter(sheet -> !posting.of(sheet).isEmpty())
        .map(
            sheet ->
                new ImportSource(
                    sheet,
                    Path.of("what was typed"),
                    Optional.of(posting.of(sheet).stream().map(PostedRow::values).toList())))
        .toList();
  }

  private Outcome refused(List<String> faults) {
    return Outcome.refused(
        book, "nothing was posted", "Nothing was posted; " + book + " is as it was:", faults);
  }

  private static List<String> dry(Posting posting) {
    if (posting.rows().isEmpty()) {
      return List.of(
          "Nothing to post: no Done cell is ticked, and the trip card is blank. Nothing was"
              + " written.");
    }
    List<String> lines = new ArrayList<>();
    posting.rows().forEach(row -> lines.add(row(row)));
    lines.add("Dry run: nothing was written.");
    return lines;
  }

  private static String row(PostedRow row) {
    return row.sheet().columns().stream()
        .map(InputColumn::name)
        .filter(row.values()::containsKey)
        .map(name -> row.values().get(name))
        .collect(Collectors.joining(" | ", row.sheet().name() + ": ", ""));
  }

  private static String posted(Map<String, Integer> posted) {
    return posted.entrySet().stream()
        .map(sheet -> rows(sheet.getValue()) + " of " + sheet.getKey())
        .collect(Collectors.joining(", ", "Posted: ", "."));
  }

  private static String rows(int count) {
    return count + (count == 1 ? " row" : " rows");
  }
}
