package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import sparewell.finding.Finding;
import sparewell.finding.Severity;
import sparewell.season.DueCheck;
import sparewell.season.Settings;
import sparewell.table.Block;
import sparewell.table.Column;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** The front page: what to do now, the figures that matter, what changed, what needs mending. */
public final class AfterTripSheet {
  public static final String NAME = "After trip";
  private static final Columns<DueCheck> CHECKS = Columns.of("Boxes to check");
  private static final Columns<Figure> FIGURES = Columns.of("Figures");
  private static final Columns<Folded> MENDING = Columns.of("To mend");

  /** Headings by which the next run finds the figures of this one. */
  public static final String FIGURE = "Figure";

  public static final String NOW = "Now";

  private static final int MOST_FINDINGS = 12;

  private AfterTripSheet() {}

  /** The part of the sheet that lists boxes to check, to be ticked off. */
  static ReportSheet checks(Results results) {
    List<DueCheck> due = DueCheck.of(results.season());
    List<Column<DueCheck>> columns =
        List.of(
            CHECKS
                .column("Box", check -> check.box().name())
                .linked(check -> Optional.of(check.box().origin())),
            CHECKS.column("Where", check -> check.box().compartment()),
            CHECKS.column(
                "Due on", check -> check.dueOn().map(Object::toString).orElse(EntryTable.NEVER)),
            EntryTable.done());
    Table<DueCheck> table = CHECKS.table(due, columns);
    return new ReportSheet(NAME, "", due.isEmpty() ? List.of() : List.of(new Block.Rows(table)));
  }

  static ReportSheet of(Results results, List<Step> toDo, List<Block> checks) {
    List<Figure> figures = Figures.of(results);
    List<Block> blocks = new ArrayList<>();
    List<Block.Line> steps = new ArrayList<>();
    steps.add(Block.Line.of(planned(results)));
    steps.addAll(Step.lines(toDo, results));
    blocks.add(new Block.Text(steps));
    blocks.addAll(checks);
    blocks.add(new Block.Rows(figureTable(figures)));
    blocks.add(Changes.of(results, figures));
    blocks.add(new Block.Rows(mending(results.findings())));
    blocks.add(cautions(results));
    blocks.add(new Block.EndOfPrint());
    blocks.add(settings(results));
    String answer = "What to do now, as of " + results.season().settings().asOf();
    return new ReportSheet(NAME, answer, blocks);
  }

  private static String planned(Results results) {
    return results.onHand().items().isEmpty()
        ? "Nothing is in stock yet: begin here."
        : results.spares().horizon().words();
  }

  /** A figure of the front page, under the same name from run to run, with what it was before. */
  record Figure(String name, String now, String meaning, Tone tone, String before) {}

  private static Table<Figure> figureTable(List<Figure> figures) {
    boolean known = figures.stream().anyMatch(figure -> !figure.before().isEmpty());
    return FIGURES.table(
        figures,
        List.of(
            FIGURES.column(FIGURE, Figure::name),
            FIGURES.column(NOW, Figure::now).toned(Figure::tone),
            FIGURES.column("At the last run", Figure::before, known),
            FIGURES.column("What it says", Figure::meaning)));
  }

  private static Table<Folded> mending(List<Finding> findings) {
    List<Folded> all =
        Folded.of(
            Causes.first(
                findings.stream().filter(finding -> finding.severity() != Severity.NOTE).toList()));
    List<Folded> grave = all.subList(0, Math.min(MOST_FINDINGS, all.size()));
    String title =
        all.size() == grave.size()
            ? "What needs mending"
            : Phrase.text(
                "What needs mending (the first %d of %d; the rest on Input checks)",
                grave.size(), all.size());
    List<Column<Folded>> columns =
        List.of(
            MENDING.column("What is wrong", row -> Phrase.capital(row.message())),
            MENDING
                .column("Where", row -> Phrase.place(row.first().at()))
                .linked(row -> Optional.of(row.first().at()).filter(at -> at.row() > 0)),
            MENDING
                .column("Severity", row -> row.first().severity().word())
                .toned(row -> row.first().severity() == Severity.ERROR ? Tone.BAD : Tone.WATCH),
            MENDING.column("What was done", Folded::done));
    return MENDING.table(grave, columns, title);
  }

  private static Block settings(Results results) {
    Settings settings = results.season().settings();
    String budget =
        settings.budget().map(money -> Phrase.money(money, settings.currency())).orElse("none set");
    return new Lines()
        .heading("Settings in force")
        .note(
            "Settings",
            settings.units().name().toLowerCase(Locale.ROOT),
            settings.carryAtLeast(),
            Phrase.exactChance(settings.chanceWantedProbability()),
            settings.chanceFromCommandLine() ? " (from the command line)" : "",
            Phrase.number(settings.planningHours()),
            Phrase.number(settings.planningDays()),
            budget,
            Phrase.exactChance(settings.fillFactorShare()),
            results.version())
        .block();
  }

  private static Block cautions(Results results) {
    Lines lines = Lines.cautions();
    if (!results.rates().converged()) {
      lines.note("Not settled");
    }
    return lines.block();
  }
}
