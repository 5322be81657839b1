package sparewell.spares;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.season.Cause;

/**
 * The last twelve months and what a next season as long as them needs.
 *
 * @param from first day of the months looked back on
 * @param to last day, the date of analysis
 * @param afloatHours hours afloat in them, and planned for the next season
 * @param styles one for each style in stock or lost, most expensive losses first
 * @param months losses of every month of them by cause, in order of time
 */
public record OffSeason(
    LocalDate from,
    LocalDate to,
    double afloatHours,
    List<StyleLine> styles,
    List<CauseLine> causes,
    List<MonthLine> months,
    Lost total) {
  public OffSeason {
    styles = List.copyOf(styles);
    causes = List.copyOf(causes);
    months = List.copyOf(months);
  }

  /**
   * Losses.
   *
   * @param money what the pieces with a known price cost
   * @param unpricedPieces pieces whose price is not known
   */
  public record Lost(int pieces, BigDecimal money, int unpricedPieces) {
    static final Lost NOTHING = new Lost(0, BigDecimal.ZERO, 0);

    Lost plus(Lost other) {
      return new Lost(
          pieces + other.pieces, money.add(other.money), unpricedPieces + other.unpricedPieces);
    }
  }

  public record CauseLine(Cause cause, Lost lost) {}

  /**
   * Losses of one month.
   *
   * @param month the month; the first and the last may be cut by the period
   * @param pieces pieces lost by cause; a cause that cost none is not in it
   */
  public record MonthLine(YearMonth month, Map<Cause, Integer> pieces) {
    public MonthLine {
      EnumMap<Cause, Integer> ordered = new EnumMap<>(Cause.class);
      ordered.putAll(pieces);
      pieces = Collections.unmodifiableMap(ordered);
    }
  }

  /**
   * One style.
   *
   * @param lost losses in the last twelve months
   * @param expectedLossPieces losses expected over the next season
   * @param onHand pieces aboard and ashore
   * @param wanted pieces to start the season with, all items: each the larger of its floor and what
   *     its losses need at the chance wanted
   * @param cost money for them; absent where a price is not known
   */
  public record StyleLine(
      String style,
      Lost lost,
      double expectedLossPieces,
      int onHand,
      int wanted,
      int buyPacks,
      Optional<BigDecimal> cost) {}
}
