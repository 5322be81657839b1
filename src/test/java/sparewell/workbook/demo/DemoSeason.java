package sparewell.workbook.demo;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sparewell.workbook.demo.DemoStyle.Item;

/**
 * A simulated log of 40 trips whose true loss rates are known.
 *
 * <p>Model, for style s on trip t in cover c:
 *
 * <pre>
 * pieces wanted  Y(s,t) ~ NegBin(mean = hours(s,t) x rate(s) x multiplier(c), size = SIZE x days)
 * which item     each piece falls on one of the style's items with fixed shares,
 *                shares(s) ~ Dirichlet(ITEM_SPREAD, ..)
 * logged         no more of an item than the angler carried that day; where more was wanted the row
 *                says Ran out
 * </pre>
 *
 * Hours of a trip are split among the styles in season at random. Hooks, weights and trailers are
 * used along with the baits they go with, so a trip's style hours add up to more than its hours.
 * Some trips have no style hours and some no cover in the log; the simulator knew both.
 *
 * <p>The seed was chosen so that the log has exactly 250 rows of losses, a style not thrown for
 * more than a year (the buzzbait), and some rows that ran out.
 */
public final class DemoSeason {
  /** Date of the analysis that the demo is set to. */
  public static final LocalDate AS_OF = LocalDate.parse("2026-03-15");

  /** Seed of the season in the demo workbook. */
  public static final long SEED = 3672;

  /** Size of the negative binomial for one day: variance = mean + mean^2 / (size x days). */
  public static final double SIZE = 2.5;

  /** Multiplier of the loss rates of all styles in each cover. */
  public static final Map<String, Double> COVER_MULTIPLIERS = multipliers();

  private static final double ITEM_SPREAD = 1.2;
  private static final double[] CAUSES_HARD = {0.62, 0.2, 0.08, 0.02, 0.08};
  private static final double[] CAUSES_SOFT = {0.22, 0.4, 0.03, 0.33, 0.02};
  private static final List<String> CAUSES = List.of("snag", "fish", "broken", "worn", "other");

  /** A trip as simulated; {@code logged} false where the log leaves the cover blank. */
  record Outing(
      String id,
      LocalDate date,
      String water,
      String cover,
      boolean coverLogged,
      double hours,
      int days,
      boolean hoursLogged,
      String note,
      Map<DemoStyle, Double> styleHours) {}

  /** A row of the losses. */
  record LossRow(Outing outing, Item item, int lost, String cause, boolean ranOut) {}

  private final Dice dice;
  private final Map<DemoStyle, double[]> itemShares = new LinkedHashMap<>();
  private final Map<DemoStyle, Double> expected = new LinkedHashMap<>();
  private final Map<DemoStyle, Double> variance = new LinkedHashMap<>();
  private final Map<DemoStyle, Integer> wanted = new LinkedHashMap<>();
  private final List<Outing> outings = new ArrayList<>();
  private final List<LossRow> losses = new ArrayList<>();

  private DemoSeason(long seed) {
    dice = new Dice(seed);
    for (DemoStyle style : DemoTackle.STYLES) {
      double[] shares = new double[style.items().size()];
      for (int i = 0; i < shares.length; i++) {
        shares[i] = dice.gamma(ITEM_SPREAD);
      }
      itemShares.put(style, shares);
    }
    for (String line : DemoTrips.LINES) {
      outings.add(outing(line));
    }
    outings.forEach(this::fish);
  }

  /** The season of that seed. */
  public static DemoSeason of(long seed) {
    return new DemoSeason(seed);
  }

  /** The season in the demo workbook. */
  public static DemoSeason standard() {
    return of(SEED);
  }

  /**
   * True loss rate of a style, pieces per 10 hours thrown, at the mix of covers of the log
   * (weighted with trip hours).
   */
  public double trueRatePer10Hours(String style) {
    double hours = 0;
    double weighted = 0;
    for (Outing outing : outings) {
      hours += outing.hours();
      weighted += outing.hours() * COVER_MULTIPLIERS.get(outing.cover());
    }
    return DemoTackle.style(style).lossesPer10Hours() * weighted / hours;
  }

  /** Names of all styles, in the order of the workbook. */
  public static List<String> styles() {
    return DemoTackle.STYLES.stream().map(DemoStyle::name).toList();
  }

  /** Hours the style was thrown in all, logged or not. */
  public double thrownHours(String style) {
    DemoStyle known = DemoTackle.style(style);
    return outings.stream()
        .mapToDouble(outing -> outing.styleHours().getOrDefault(known, 0.0))
        .sum();
  }

  /** Expected pieces wanted of the style over the whole log, given the hours thrown. */
  public double expectedPieces(String style) {
    return expected.getOrDefault(DemoTackle.style(style), 0.0);
  }

  /** Variance of that number. */
  public double variancePieces(String style) {
    return variance.getOrDefault(DemoTackle.style(style), 0.0);
  }

  /** Pieces wanted of the style over the whole log, whether or not they were carried. */
  public int wantedPieces(String style) {
    return wanted.getOrDefault(DemoTackle.style(style), 0);
  }

  List<Outing> outings() {
    return List.copyOf(outings);
  }

  List<LossRow> losses() {
    return List.copyOf(losses);
  }

  private Outing outing(String line) {
    String[] part = line.split("\\|", -1);
    LocalDate date = LocalDate.parse(part[0].strip());
    String water = part[1].strip();
    String cover = part[2].strip();
    double hours = Double.parseDouble(part[3].strip());
    int days = Integer.parseInt(part[4].strip());
    String flags = part[5];
    String place = water.replaceFirst("^Lake ", "").split(" ")[0];
    return new Outing(
        place + " " + date,
        date,
        water,
        cover,
        !flags.contains("c"),
        hours,
        days,
        !flags.contains("h"),
        part[6].strip(),
        styleHours(date, hours));
  }

  /** Splits the hours of a trip among five to eight styles in season, in half hours. */
  private Map<DemoStyle, Double> styleHours(LocalDate date, double tripHours) {
    List<DemoStyle> choice = new ArrayList<>();
    for (DemoStyle style : DemoTackle.STYLES) {
      boolean retired = style.name().equals("Buzzbait") && date.getYear() > 2024;
      if (style.popularity() > 0 && style.inSeason(date.getMonthValue()) && !retired) {
        choice.add(style);
      }
    }
    int count = Math.min(choice.size(), dice.between(5, 8));
    Map<DemoStyle, Double> raw = new LinkedHashMap<>();
    double total = 0;
    for (int i = 0; i < count; i++) {
      double[] weights = choice.stream().mapToDouble(DemoStyle::popularity).toArray();
      DemoStyle style = choice.remove(dice.pick(weights));
      double part = 0.3 + dice.gamma(1.5);
      raw.put(style, part);
      total += part;
    }
    Map<DemoStyle, Double> hours = new LinkedHashMap<>();
    for (Map.Entry<DemoStyle, Double> entry : raw.entrySet()) {
      hours.put(entry.getKey(), halves(entry.getValue() / total * tripHours, 0.5));
    }
    alongWith(hours, "Craw trailer", 1, "Football jig", "Flipping jig", "Bladed jig");
    alongWith(hours, "Offset worm hook", 0.8, "Stick worm", "Ribbon tail worm", "Creature bait");
    alongWith(hours, "Bullet weight", 0.9, "Ribbon tail worm", "Creature bait");
    alongWith(hours, "Drop shot weight", 0.6, "Finesse worm");
    alongWith(hours, "Ball head jig", 0.5, "Finesse worm", "Paddle tail", "Tube");
    return hours;
  }

  private static void alongWith(
      Map<DemoStyle, Double> hours, String style, double share, String... baits) {
    double sum = 0;
    for (String bait : baits) {
      sum += hours.getOrDefault(DemoTackle.style(bait), 0.0);
    }
    double used = halves(sum * share, 0);
    if (used > 0) {
      hours.put(DemoTackle.style(style), used);
    }
  }

  private static double halves(double hours, double least) {
    return Math.max(least, Math.round(hours * 2) / 2.0);
  }

  private void fish(Outing outing) {
    double multiplier = COVER_MULTIPLIERS.get(outing.cover());
    for (Map.Entry<DemoStyle, Double> entry : outing.styleHours().entrySet()) {
      DemoStyle style = entry.getKey();
      double mean = entry.getValue() * style.lossesPer10Hours() / 10 * multiplier;
      double size = SIZE * outing.days();
      int pieces = dice.negativeBinomial(mean, size);
      expected.merge(style, mean, Double::sum);
      variance.merge(style, mean + mean * mean / size, Double::sum);
      wanted.merge(style, pieces, Integer::sum);
      log(outing, style, pieces);
    }
  }

  private void log(Outing outing, DemoStyle style, int pieces) {
    List<Item> items = style.items();
    int[][] byItemAndCause = new int[items.size()][CAUSES.size()];
    int[] byItem = new int[items.size()];
    boolean[] ranOut = new boolean[items.size()];
    int carried = style.packs() ? style.piecesPerPack() : 3;
    double[] causes = style.family().equals(DemoTackle.PLASTICS) ? CAUSES_SOFT : CAUSES_HARD;
    for (int piece = 0; piece < pieces; piece++) {
      int item = dice.pick(itemShares.get(style));
      int cause = dice.pick(causes);
      if (byItem[item] == carried) {
        ranOut[item] = true;
      } else {
        byItem[item]++;
        byItemAndCause[item][cause]++;
      }
    }
    for (int item = 0; item < items.size(); item++) {
      boolean said = false;
      for (int cause = 0; cause < CAUSES.size(); cause++) {
        int lost = byItemAndCause[item][cause];
        if (lost > 0) {
          boolean says = ranOut[item] && !said;
          said |= says;
          losses.add(new LossRow(outing, items.get(item), lost, CAUSES.get(cause), says));
        }
      }
    }
  }

  private static Map<String, Double> multipliers() {
    Map<String, Double> map = new LinkedHashMap<>();
    map.put("wood", 1.5);
    map.put("rock", 1.3);
    map.put("piers", 1.0);
    map.put("grass", 0.7);
    map.put("open", 0.5);
    return java.util.Collections.unmodifiableMap(map);
  }
}
