package sparewell.spares;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.rates.LossForecast;
import sparewell.season.Cause;
import sparewell.season.ItemId;
import sparewell.season.Loss;
import sparewell.season.Season;
import sparewell.season.Style;
import sparewell.season.Trip;
import sparewell.stock.OnHand;

/** Looks back over twelve months and plans a season of as many hours. */
public final class OffSeasonPlanner {
  private final Season season;
  private final Map<String, Style> styles;
  private final Map<ItemId, Optional<BigDecimal>> packPrices = new HashMap<>();

  private OffSeasonPlanner(Season season, OnHand onHand) {
    this.season = season;
    this.styles = season.stylesByName();
    onHand.items().forEach(item -> packPrices.put(item.item(), item.packPrice()));
  }

  /**
   * The off-season view; absent where no trip with hours lies in the last twelve months.
   *
   * <p>Looks back from the date of analysis over twelve months, that day included. A lost piece
   * costs pack price / pieces a pack. The next season has as many hours and days as these months
   * had.
   */
  public static Optional<OffSeason> plan(Season season, OnHand onHand, LossForecast forecast) {
    LocalDate to = season.settings().asOf();
    LocalDate from = to.minusYears(1).plusDays(1);
    List<Trip> trips =
        season.trips().stream()
            .filter(trip -> !trip.date().isBefore(from) && !trip.date().isAfter(to))
            .toList();
    double hours = trips.stream().mapToDouble(trip -> trip.fishedHours().orElse(0)).sum();
    double days = trips.stream().mapToDouble(Trip::days).sum();
    if (!(hours > 0)) {
      return Optional.empty();
    }
    OffSeasonPlanner planner = new OffSeasonPlanner(season, onHand);
    Map<String, OffSeason.Lost> byStyle = new LinkedHashMap<>();
    Map<Cause, OffSeason.Lost> byCause = new EnumMap<>(Cause.class);
    Map<YearMonth, Map<Cause, Integer>> byMonth = months(from, to);
    OffSeason.Lost total = OffSeason.Lost.NOTHING;
    Map<String, Trip> inside = new HashMap<>();
    trips.forEach(trip -> inside.put(trip.id(), trip));
    for (Loss loss : season.losses()) {
      if (inside.containsKey(loss.trip()) && loss.lostPieces() > 0) {
        OffSeason.Lost lost = planner.lost(loss);
        byStyle.merge(loss.item().style(), lost, OffSeason.Lost::plus);
        byCause.merge(loss.cause(), lost, OffSeason.Lost::plus);
        byMonth
            .get(YearMonth.from(inside.get(loss.trip()).date()))
            .merge(loss.cause(), loss.lostPieces(), Integer::sum);
        total = total.plus(lost);
      }
    }
    List<OffSeason.CauseLine> causes = new ArrayList<>();
    byCause.forEach((cause, lost) -> causes.add(new OffSeason.CauseLine(cause, lost)));
    causes.sort(Comparator.comparingInt(line -> -line.lost().pieces()));
    Horizon next = HorizonPlanner.ofHours(season, onHand, forecast, hours, days);
    return Optional.of(
        new OffSeason(
            from,
            to,
            hours,
            planner.lines(SparesPlanner.rows(season, onHand, forecast, next), byStyle),
            causes,
            byMonth.entrySet().stream()
                .map(month -> new OffSeason.MonthLine(month.getKey(), month.getValue()))
                .toList(),
            total));
  }

  /** Cost of the losses of one trip, at today's pack prices. */
  public static OffSeason.Lost cost(Season season, OnHand onHand, String trip) {
    OffSeasonPlanner planner = new OffSeasonPlanner(season, onHand);
    return season.losses().stream()
        .filter(loss -> loss.trip().equals(trip) && loss.lostPieces() > 0)
        .map(planner::lost)
        .reduce(OffSeason.Lost.NOTHING, OffSeason.Lost::plus);
  }

  private static Map<YearMonth, Map<Cause, Integer>> months(LocalDate from, LocalDate to) {
    Map<YearMonth, Map<Cause, Integer>> months = new LinkedHashMap<>();
    YearMonth last = YearMonth.from(to);
    for (YearMonth month = YearMonth.from(from);
        !month.isAfter(last);
        month = month.plusMonths(1)) {
      months.put(month, new EnumMap<>(Cause.class));
    }
    return months;
  }

  private OffSeason.Lost lost(Loss loss) {
    Style style = styles.get(loss.item().style());
    Optional<BigDecimal> price =
        packPrices
            .getOrDefault(loss.item(), Optional.empty())
            .or(() -> style == null ? Optional.empty() : style.packPrice());
    if (price.isEmpty() || style == null) {
      return new OffSeason.Lost(loss.lostPieces(), BigDecimal.ZERO, loss.lostPieces());
    }
    BigDecimal money =
        price
            .get()
            .multiply(BigDecimal.valueOf(loss.lostPieces()))
            .divide(BigDecimal.valueOf(style.piecesPerPack()), 6, RoundingMode.HALF_EVEN);
    return new OffSeason.Lost(loss.lostPieces(), money, 0);
  }

  private List<OffSeason.StyleLine> lines(
      List<SparesRow> rows, Map<String, OffSeason.Lost> byStyle) {
    Map<String, List<SparesRow>> stocked = new HashMap<>();
    for (SparesRow row : rows) {
      stocked.computeIfAbsent(row.item().style(), style -> new ArrayList<>()).add(row);
    }
    List<OffSeason.StyleLine> lines = new ArrayList<>();
    for (Style style : season.styles()) {
      OffSeason.Lost lost = byStyle.getOrDefault(style.name(), OffSeason.Lost.NOTHING);
      List<SparesRow> own = stocked.getOrDefault(style.name(), List.of());
      if (own.isEmpty() && lost.pieces() == 0) {
        continue;
      }
      lines.add(
          new OffSeason.StyleLine(
              style.name(),
              lost,
              own.stream().mapToDouble(SparesRow::expectedLossPieces).sum(),
              own.stream().mapToInt(row -> row.aboard() + row.ashore()).sum(),
              own.stream().mapToInt(SparesRow::carry).sum(),
              own.stream().mapToInt(SparesRow::buyPacks).sum(),
              cost(own)));
    }
    lines.sort(
        Comparator.comparing((OffSeason.StyleLine line) -> line.lost().money())
            .thenComparing(line -> line.lost().pieces())
            .reversed());
    return lines;
  }

  private static Optional<BigDecimal> cost(List<SparesRow> rows) {
    BigDecimal cost = BigDecimal.ZERO;
    for (SparesRow row : rows) {
      if (row.cost().isEmpty()) {
        return Optional.empty();
      }
      cost = cost.add(row.cost().get());
    }
    return Optional.of(cost);
  }
}
