package sparewell.table;

import java.util.List;
import java.util.Optional;

/**
 * A chart drawn by the spreadsheet itself from cells.
 *
 * <p>Where {@code data} is also a {@link Block.Rows} of the same sheet (the same object), the chart
 * points at that table; else its figures are put beside the printed part of the sheet.
 *
 * @param xTitle title of the category or x axis; the unit of its column is added
 * @param yTitle title of the value axis; the unit of the first series is added
 * @param see the sentence under the chart that says what to see
 * @param x heading of the column of categories, of numbers for a {@link Kind#SCATTER}, of dates or
 *     categories for {@link Kind#BANDS}
 * @param series what is drawn, at least one
 */
public record Chart(
    Kind kind,
    String title,
    String xTitle,
    String yTitle,
    String see,
    Table<?> data,
    String x,
    List<Series> series)
    implements Block {
  private static final int SHORTEST_ROWS = 18;
  private static final int TALLEST_ROWS = 44;
  private static final int ROWS_BESIDE_BARS = 7;

  /** Rows of a panel, and how many stand side by side. */
  public static final int PANEL_ROWS = 12;

  public static final int PANELS_ACROSS = 2;

  public Chart {
    series = List.copyOf(series);
  }

  /** Rows of cells that it covers: lying bars grow with their number, no data take one row. */
  public int coveredRows() {
    if (data.rows().isEmpty()) {
      return 1;
    }
    if (kind == Kind.BANDS) {
      return 1 + PANEL_ROWS * ((series.size() + PANELS_ACROSS - 1) / PANELS_ACROSS);
    }
    if (kind != Kind.BAR) {
      return SHORTEST_ROWS + 2;
    }
    int bars = ROWS_BESIDE_BARS + data.rows().size();
    return Math.max(SHORTEST_ROWS, Math.min(TALLEST_ROWS, bars));
  }

  public enum Kind {
    /** Lying bars, the first row on top. */
    BAR,
    COLUMN,
    STACKED_COLUMN,
    /** Lines over categories at even distances. */
    LINE,
    /** Points, joined by lines where the series says so, over a number axis. */
    SCATTER,
    /**
     * A small panel for each series: its line over the numbers or dates of x, and behind it the
     * band between the ends of its interval. Made for forecasts: several bands in one picture would
     * hide each other.
     */
    BANDS
  }

  public enum Mark {
    /** The usual of the kind: bars, columns, a line with markers. */
    USUAL,
    /** Markers alone; hollow bars where the bars lie. */
    MARKERS
  }

  /** Columns that hold the ends of an interval, on the scale of the values. */
  public record Interval(String lowHeading, String highHeading) {}

  /** A column by its heading, which is also its name; the interval is shown as error bars. */
  public record Series(String heading, Mark mark, Optional<Interval> interval) {
    public static Series of(String heading) {
      return new Series(heading, Mark.USUAL, Optional.empty());
    }

    public Series as(Mark newMark) {
      return new Series(heading, newMark, interval);
    }

    public Series between(String lowHeading, String highHeading) {
      return new Series(heading, mark, Optional.of(new Interval(lowHeading, highHeading)));
    }
  }
}
