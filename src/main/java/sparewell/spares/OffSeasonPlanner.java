package sparewell.spares;

import static java.math.RoundingMode.HALF_EVEN;

import java.math.BigDecimal;
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
import java.util.stream.Collectors;
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
    if (!(hours > 0)) {
      return Optional.empty();
    }
    double days = trips.stream().mapToDouble(Trip::days).sum();
    Horizon next = HorizonPlanner.ofHours(season, onHand, forecast, hours, days);
    List<SparesRow> rows = SparesPlanner.rows(season, onHand, forecast, next);
    return Optional.of(new OffSeasonPlanner(season, onHand).lookBack(from, to, hours, trips, rows));
  }

  private OffSeason lookBack(
      LocalDate from, LocalDate to, double hours, List<Trip> trips, List<SparesRow> rows) {
    Map<String, YearMonth> inside =
        trips.stream().collect(Collectors.toMap(Trip::id, trip -> YearMonth.from(trip.date())));
    Map<String, OffSeason.Lost> byStyle = new LinkedHashMap<>();
    Map<Cause, OffSeason.Lost> byCause = new EnumMap<>(Cause.class);
    Map<YearMonth, Map<Cause, Integer>> byMonth = months(from, to);
    OffSeason.Lost total = OffSeason.Lost.NOTHING;
    for (Loss loss : season.losses()) {
      if (inside.containsKey(loss.trip()) && loss.lostPieces() > 0) {
        OffSeason.Lost lost = lost(loss);
        byStyle.merge(loss.item().style(), lost, OffSeason.Lost::plus);
        byCause.merge(loss.cause(), lost, OffSeason.Lost::plus);
        byMonth.get(inside.get(loss.trip())).merge(loss.cause(), loss.lostPieces(), Integer::sum);
        total = total.plus(lost);
      }
    }
    return new OffSeason(
        from,
        to,
        hours,
        lines(rows, byStyle),
        byCause.entrySet().stream()
            .map(cause -> new OffSeason.CauseLine(cause.getKey(), cause.getValue()))
            .sorted(Comparator.comparingInt(line -> -line.lost().pieces()))
            .toList(),
        byMonth.entrySet().stream()
            .map(month -> new OffSeason.MonthLine(month.getKey(), month.getValue()))
            .toList(),
        total);
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
    return packPrices
        .getOrDefault(loss.item(), Optional.empty())
        .or(style::packPrice)
        .map(price -> price.multiply(BigDecimal.valueOf(loss.lostPieces())))
        .map(packs -> packs.divide(BigDecimal.valueOf(style.piecesPerPack()), 6, HALF_EVEN))
        .map(money -> new OffSeason.Lost(loss.lostPieces(), money, 0))
        .orElse(new OffSeason.Lost(loss.lostPieces(), BigDecimal.ZERO, loss.lostPieces()));
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
    return rows.stream().allMatch(row -> row.cost().isPresent())
        ? rows.stream()
            .map(SparesRow::cost)
            .flatMap(Optional::stream)
            .reduce(BigDecimal::add)
            .or(() -> Optional.of(BigDecimal.ZERO))
        : Optional.empty();
  }
}
