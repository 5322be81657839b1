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
import sparewell.table.Format;
import sparewell.table.ReportSheet;
import sparewell.table.Table;
import sparewell.table.Tone;

/** The front page: what to do now, the figures that matter, what changed, what needs mending. */
public final class AfterTripSheet {
  /** Tab of the sheet. */
  public static final String NAME = "After trip";

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
            Column.<DueCheck>sheetOnly("Box", Format.TEXT, "Box.", check -> check.box().name())
                .linked(check -> Optional.of(check.box().origin())),
            Column.sheetOnly(
                "Where", Format.TEXT, "Where it stands.", check -> check.box().compartment()),
            Column.sheetOnly(
                "Due on",
                Format.TEXT,
                "Day by which it was to be checked.",
                check -> check.dueOn().map(Object::toString).orElse(EntryTable.NEVER)),
            EntryTable.done());
    Table<DueCheck> table = new Table<>("", "Boxes to check", columns, due, "");
    return new ReportSheet(NAME, "", due.isEmpty() ? List.of() : List.of(new Block.Rows(table)));
  }

  /** The sheet with what there is to do and the boxes to check. */
  static ReportSheet of(Results results, List<Step> toDo, List<Block> checks) {
    List<Figure> figures = Figures.of(results);
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Text(StepLines.of(toDo)));
    blocks.addAll(checks);
    blocks.add(new Block.Rows(figureTable(figures)));
    blocks.add(new Block.Text(Changes.of(results, figures)));
    blocks.add(new Block.Rows(mending(results.findings())));
    blocks.add(new Block.Text(cautions(results)));
    blocks.add(settings(results));
    String planned =
        results.onHand().items().isEmpty()
            ? "Nothing is in stock yet: begin here."
            : results.spares().horizon().words();
    String answer = "What to do now, as of " + results.season().settings().asOf() + ". " + planned;
    return new ReportSheet(NAME, answer, blocks);
  }

  /**
   * A figure of the front page.
   *
   * @param name what it is; the same from run to run
   * @param now its value in words
   * @param meaning what to make of it
   * @param tone state of health
   * @param before its value at the last run; empty where not known
   */
  record Figure(String name, String now, String meaning, Tone tone, String before) {
    /** Its name where it stands alone. */
    String spoken() {
      return Figures.SPOKEN.getOrDefault(name, name);
    }
  }

  private static Table<Figure> figureTable(List<Figure> figures) {
    return new Table<>(
        "",
        "The figures that matter",
        List.of(
            Column.sheetOnly(FIGURE, Format.TEXT, "What it is.", Figure::name),
            Column.<Figure>sheetOnly(NOW, Format.TEXT, "Its value now.", Figure::now)
                .toned(Figure::tone),
            Column.sheetOnly(
                "At the last run", Format.TEXT, "Its value before this run.", Figure::before),
            Column.sheetOnly("What it says", Format.TEXT, "How to read it.", Figure::meaning)),
        figures,
        "No figures.");
  }

  private static Table<Folded> mending(List<Finding> findings) {
    List<Folded> all =
        Folded.of(
            Causes.first(
                findings.stream().filter(finding -> finding.severity() != Severity.NOTE).toList()));
    List<Folded> grave = all.subList(0, Math.min(MOST_FINDINGS, all.size()));
    String title =
        "What needs mending"
            + (all.size() > grave.size()
                ? " (the first "
                    + grave.size()
                    + " of "
                    + all.size()
                    + "; the rest on Input checks)"
                : "");
    List<Column<Folded>> columns =
        List.of(
            Column.sheetOnly(
                "What is wrong",
                Format.TEXT,
                "What is wrong.",
                row -> Phrase.capital(row.message())),
            Column.<Folded>sheetOnly(
                    "Where",
                    Format.TEXT,
                    "Its cell, of several the first; click to go there.",
                    row -> Phrase.place(row.first().at()))
                .linked(row -> Optional.of(row.first().at()).filter(at -> at.row() > 0)),
            Column.<Folded>sheetOnly(
                    "How grave",
                    Format.TEXT,
                    "error = left out, or a limit is broken; warning = read under an assumption.",
                    row -> row.first().severity().word())
                .toned(row -> row.first().severity() == Severity.ERROR ? Tone.BAD : Tone.WATCH),
            Column.sheetOnly(
                "What was done", Format.TEXT, "What was done about it.", Folded::done));
    return new Table<>("", title, columns, grave, "Nothing needs mending.");
  }

  private static Block settings(Results results) {
    Settings settings = results.season().settings();
    String line =
        String.join(
            " · ",
            "Units " + settings.units().name().toLowerCase(Locale.ROOT),
            "Carry at least " + settings.carryAtLeast() + " of each item",
            "Chance wanted "
                + Phrase.exactChance(settings.chanceWantedProbability())
                + (settings.chanceFromCommandLine() ? " (from the command line)" : ""),
            "Planning hours "
                + Phrase.number(settings.planningHours())
                + " in "
                + Phrase.number(settings.planningDays())
                + " days",
            "Budget "
                + settings
                    .budget()
                    .map(money -> Phrase.money(money, settings.currency()))
                    .orElse("none set"),
            "Fill factor " + Phrase.exactChance(settings.fillFactorShare()),
            "sparewell " + results.version());
    return new Block.Text(
        List.of(Block.Line.heading("Settings in force"), Phrase.small(line + ".")));
  }

  private static List<Block.Line> cautions(Results results) {
    List<Block.Line> lines = new ArrayList<>(Cautions.LINES);
    if (!results.rates().converged()) {
      lines.add(
          Phrase.small(
              "The fit of the loss rates did not settle: read them as rough until more trips are"
                  + " logged."));
    }
    return lines;
  }
}
