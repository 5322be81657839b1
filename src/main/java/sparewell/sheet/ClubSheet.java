package sparewell.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import sparewell.experience.Club;
import sparewell.experience.Unit;
import sparewell.table.Block;
import sparewell.table.Chart;
import sparewell.table.Column;
import sparewell.table.Format;
import sparewell.table.ReportSheet;
import sparewell.table.Table;

/** Rates of a club's logs together: a workbook of its own, in which nobody is named. */
public final class ClubSheet {
  private static final double Z = 1.6448536269514722; // 95 % point of a standard normal
  private static final int MOST_STYLES = 40;

  private ClubSheet() {}

  /**
   * The sheet.
   *
   * @param club rates in one unit
   */
  public static ReportSheet of(Club club) {
    boolean thrown = club.unit() == Unit.PIECES_PER_HOUR_THROWN;
    double between = Math.exp(club.logBetween());
    List<Club.Line> lines =
        club.lines().stream()
            .sorted(
                Comparator.comparingDouble((Club.Line line) -> -line.typical().mean())
                    .thenComparing(Club.Line::style))
            .toList();
    Table<Club.Line> table = table(lines, between);
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Text(top(club, thrown, between)));
    blocks.add(new Block.Rows(table));
    blocks.add(chart(lines, between));
    return new ReportSheet(
        thrown ? "Club rates" : "Club rates afloat",
        "What the club loses of each style in 10 hours "
            + (thrown ? "thrown" : "afloat")
            + ", and how far anglers differ",
        blocks);
  }

  private static List<Block.Line> top(Club club, boolean thrown, double between) {
    return List.of(
        Block.Line.of(
            String.format(
                Locale.ROOT,
                "%d %s put together. The same style goes with one angler up to %.1f times as fast as"
                    + " with the typical one, or as slowly, nine times in ten.",
                club.anglers(),
                club.anglers() == 1 ? "log" : "logs",
                Math.exp(Z * between))),
        Phrase.small(
            "Hours are hours "
                + (thrown ? "thrown" : "afloat")
                + ", rates are at each log's usual mix of cover. How far anglers differ is taken to"
                + " be the same for every style; no log counts for more than 25 pieces of a style."
                + " Nobody can be told from these figures but where only one or two logs have a"
                + " style."));
  }

  private static Table<Club.Line> table(List<Club.Line> lines, double between) {
    return new Table<>(
        "",
        "Rates by style: pieces lost in 10 hours",
        List.of(
            Column.sheetOnly("Style", Format.TEXT, "Style of lure or gear", Club.Line::style),
            Column.sheetOnly("Family", Format.TEXT, "Its family", Club.Line::family),
            Column.sheetOnly("Logs", Format.COUNT, "Logs that have it", Club.Line::logs),
            Column.sheetOnly(
                "Trips", Format.COUNT, "Trips on which it was thrown", Club.Line::trips),
            Column.sheetOnly("Hours", Format.HOURS, "Hours in all logs", Club.Line::hours),
            Column.sheetOnly("Lost", Format.COUNT, "Pieces lost in those hours", Club.Line::pieces),
            Column.sheetOnly(
                "Typical", Format.NUMBER, "Rate of the typical angler", line -> at(line, 0)),
            Column.sheetOnly(
                "Typical, low",
                Format.NUMBER,
                "The typical rate is higher than this with 95 % chance",
                line -> at(line, -Z * Math.sqrt(line.typical().variance()))),
            Column.sheetOnly(
                "Typical, high",
                Format.NUMBER,
                "The typical rate is lower than this with 95 % chance",
                line -> at(line, Z * Math.sqrt(line.typical().variance()))),
            Column.sheetOnly(
                "Anglers from",
                Format.NUMBER,
                "Nineteen anglers in twenty lose more than this",
                line -> at(line, -spread(line, between))),
            Column.sheetOnly(
                "Anglers to",
                Format.NUMBER,
                "Nineteen anglers in twenty lose less than this",
                line -> at(line, spread(line, between)))),
        lines,
        "No log has a rate.");
  }

  private static Chart chart(List<Club.Line> lines, double between) {
    return new Chart(
        Chart.Kind.FOREST,
        "What anglers lose of each style, nine in ten between the ends",
        "Style",
        "Pieces lost in 10 hours",
        "See: the marker is the typical angler; the line reaches over nine anglers in ten.",
        new Table<>(
            "",
            "",
            List.of(
                Column.sheetOnly("Style", Format.TEXT, "", Club.Line::style),
                Column.sheetOnly("Typical", Format.NUMBER, "", line -> at(line, 0)),
                Column.sheetOnly(
                    "From", Format.NUMBER, "", line -> at(line, -spread(line, between))),
                Column.sheetOnly("To", Format.NUMBER, "", line -> at(line, spread(line, between)))),
            lines.stream().limit(MOST_STYLES).toList(),
            ""),
        "Style",
        List.of(Chart.Series.of("Typical").between("From", "To")));
  }

  private static double spread(Club.Line line, double between) {
    return Z * Math.sqrt(between * between + line.typical().variance());
  }

  private static double at(Club.Line line, double away) {
    return 10 * Math.exp(line.typical().mean() + away);
  }
}
