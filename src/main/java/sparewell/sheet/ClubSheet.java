package sparewell.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sparewell.experience.Club;
import sparewell.experience.Unit;
import sparewell.table.Block;
import sparewell.table.Chart;
import sparewell.table.Format;
import sparewell.table.ReportSheet;
import sparewell.table.Table;

/** Rates of a club's logs together: a workbook of its own, in which nobody is named. */
public final class ClubSheet {
  private static final Columns<Club.Line> COLUMNS = Columns.of("Club rates");

  private static final double Z = 1.6448536269514722; // 95 % point of a standard normal
  private static final int MOST_STYLES = 40;

  private ClubSheet() {}

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
    blocks.add(top(club, thrown, between));
    blocks.add(new Block.Rows(table));
    chart(lines, between).ifPresent(blocks::add);
    return new ReportSheet(
        thrown ? "Club rates" : "Club rates afloat",
        "What the club loses of each style in 10 hours "
            + (thrown ? "thrown" : "afloat")
            + ", and how far anglers differ",
        blocks);
  }

  private static Block top(Club club, boolean thrown, double between) {
    return new Lines()
        .plain(
            "%s combined. Nine anglers in ten lose the same style at most %.1f times faster or slower"
                + " than the typical one.",
            Phrase.count(club.anglers(), "log"), Math.exp(Z * between))
        .note("Club rates", thrown ? "thrown" : "afloat")
        .block();
  }

  private static Table<Club.Line> table(List<Club.Line> lines, double between) {
    return COLUMNS.table(
        lines,
        List.of(
            COLUMNS.column("Style", Club.Line::style),
            COLUMNS.column("Family", Club.Line::family),
            COLUMNS.column("Logs", Club.Line::logs),
            COLUMNS.column("Trips", Club.Line::trips),
            COLUMNS.column("Hours", Club.Line::hours),
            COLUMNS.column("Lost", Club.Line::pieces),
            COLUMNS.column("Typical", line -> at(line, 0)),
            COLUMNS.column(
                "Typical, low", line -> at(line, -Z * Math.sqrt(line.typical().variance()))),
            COLUMNS.column(
                "Typical, high", line -> at(line, Z * Math.sqrt(line.typical().variance()))),
            COLUMNS.column("Anglers from", line -> at(line, -spread(line, between))),
            COLUMNS.column("Anglers to", line -> at(line, spread(line, between)))));
  }

  private static Optional<Chart> chart(List<Club.Line> lines, double between) {
    return Charts.chart(
        "Club rates",
        Chart.Kind.BAR,
        lines.stream().limit(MOST_STYLES).toList(),
        List.of(
            Format.TEXT.onSheet("Style", "", Club.Line::style),
            Format.NUMBER.onSheet("Typical", "", line -> at(line, 0)),
            Format.NUMBER.onSheet("From", "", line -> at(line, -spread(line, between))),
            Format.NUMBER.onSheet("To", "", line -> at(line, spread(line, between)))),
        List.of(Chart.Series.of("Typical").between("From", "To")));
  }

  private static double spread(Club.Line line, double between) {
    return Z * Math.sqrt(between * between + line.typical().variance());
  }

  private static double at(Club.Line line, double away) {
    return 10 * Math.exp(line.typical().mean() + away);
  }
}
