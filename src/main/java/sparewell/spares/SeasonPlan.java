package sparewell.spares;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import sparewell.season.Event;
import sparewell.season.ItemId;

/**
 * All events ahead, one after the other.
 *
 * @param stages one for each event, in order of date
 * @param lines one for each event and item that it uses
 * @param styles one for each event and style that it uses, what it uses most first
 * @param purchases what has to be bought by when, in order of date
 * @param courses how the stock of the styles that run down first falls if nothing is bought
 */
public record SeasonPlan(
    List<Stage> stages,
    List<Line> lines,
    List<StyleLine> styles,
    List<Purchase> purchases,
    List<Month> months,
    List<Course> courses) {
  public SeasonPlan {
    stages = List.copyOf(stages);
    lines = List.copyOf(lines);
    styles = List.copyOf(styles);
    purchases = List.copyOf(purchases);
    months = List.copyOf(months);
    courses = List.copyOf(courses);
  }

  /** Money for purchases, as far as prices are known. */
  public static BigDecimal cost(List<Purchase> purchases) {
    return purchases.stream()
        .map(Purchase::cost)
        .flatMap(Optional::stream)
        .reduce(BigDecimal.ZERO, BigDecimal::add);
  }

  /** Purchases that losses ask for, in order of date. */
  public List<Purchase> forLosses() {
    return purchases.stream().filter(one -> !one.onlyFloor()).toList();
  }

  /** Purchases that only fill floors, all with the first order. */
  public List<Purchase> forFloors() {
    return purchases.stream().filter(Purchase::onlyFloor).toList();
  }

  /**
   * One event.
   *
   * @param together whether no free day lies before it, so that it is bought for with the one
   *     before
   * @param expectedLossPieces pieces expected to be lost at it
   * @param missedPieces of them, those that would be missed if nothing were bought
   * @param unboughtProbability chance that nothing important has run out by its end if nothing is
   *     bought; absent where nothing is watched
   * @param plannedProbability the same with all bought as planned
   * @param cost money for them, as far as prices are known
   * @param buyBy last day to order them; absent where there are none
   */
  public record Stage(
      Event event,
      boolean together,
      double expectedLossPieces,
      double missedPieces,
      OptionalDouble unboughtProbability,
      OptionalDouble plannedProbability,
      int packs,
      BigDecimal cost,
      Optional<LocalDate> buyBy) {}

  /**
   * An item at an event.
   *
   * @param expectedLossPieces pieces expected to be lost at it
   * @param beforePieces pieces expected to be left before it if nothing is bought and all that lies
   *     ashore is brought
   * @param runOutProbability chance that it has run out by the end of the event then
   * @param buyBy last day to order more of it for this event; absent where there is enough
   */
  public record Line(
      Event event,
      ItemId item,
      double expectedLossPieces,
      double beforePieces,
      double runOutProbability,
      Optional<LocalDate> buyBy) {}

  /**
   * A style at an event.
   *
   * @param expectedLossPieces pieces expected to be lost at it
   * @param beforePieces pieces of all its items expected to be left before it if nothing is bought
   */
  public record StyleLine(
      Event event, String style, double expectedLossPieces, double beforePieces) {}

  /**
   * Packs of an item to order by a day for an event.
   *
   * @param buyBy last day to order them
   * @param cost money for them; absent without a price
   * @param floorPacks of them, packs that only fill the floor
   * @param laterPacks of them, packs beyond what the spares for the next event ask for: later
   *     events draw on the same stock
   */
  public record Purchase(
      LocalDate buyBy,
      Event event,
      ItemId item,
      int packs,
      int pieces,
      Optional<BigDecimal> cost,
      int floorPacks,
      int laterPacks) {
    /** True where losses call for none of it. */
    public boolean onlyFloor() {
      return floorPacks == packs;
    }
  }

  /** Money to spend in a month, and packs without a price. */
  public record Month(YearMonth month, int packs, BigDecimal money, int unpricedPacks) {}

  /** The stock of a style through the season if nothing is bought. */
  public record Course(String style, List<Point> points) {
    public Course {
      points = List.copyOf(points);
    }
  }

  /**
   * Pieces of a style left on a day.
   *
   * @param date today, or the last day of an event
   * @param expectedPieces on average
   * @param low90Pieces 5 % point
   * @param high90Pieces 95 % point
   */
  public record Point(LocalDate date, double expectedPieces, int low90Pieces, int high90Pieces) {}
}
