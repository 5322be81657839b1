package sparewell.stow;

import static sparewell.stow.Boats.cm;
import static sparewell.stow.Boats.kg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import sparewell.season.Dimensions;
import sparewell.season.Season;
import sparewell.stock.OnHand;
import sparewell.units.Mass;

/**
 * Seeded invented boats for tests and the benchmark: a layout is planted first and the limits are
 * drawn around it, so that a plan within all limits exists; volumes are 70 to 85 % full.
 */
final class StowCases {
  /** A season with what is on hand. */
  record Case(Season season, OnHand onHand) {}

  private static final double[][] TRAYS_CM = {
    {28, 18, 4.5}, {36, 23, 5}, {36, 23, 9}, {28, 18, 9}, {22, 13, 4}, {40, 30, 20}, {50, 20, 12}
  };

  private StowCases() {}

  /** A case of that size; {@code shuffledShare} of the boxes stand where they should not. */
  static Case planted(int boxCount, int placeCount, long seed) {
    for (long attempt = 0; ; attempt++) {
      Optional<Case> drawn = draw(boxCount, placeCount, new Random(seed * 7919 + attempt));
      if (drawn.isPresent()) {
        return drawn.get();
      }
    }
  }

  /** The numbers of such a case. */
  static StowProblem problem(int boxCount, int placeCount, long seed) {
    Case drawn = planted(boxCount, placeCount, seed);
    return new StowSetup(
            drawn.season(), AboardLoads.of(drawn.season(), drawn.onHand()), drawn.onHand())
        .problem;
  }

  private static Optional<Case> draw(int boxCount, int placeCount, Random random) {
    double[][] boxCm = new double[boxCount][];
    double[] boxKg = new double[boxCount];
    double boxLitres = 0;
    for (int box = 0; box < boxCount; box++) {
      double[] tray = TRAYS_CM[random.nextInt(TRAYS_CM.length)];
      double scale = 0.9 + 0.2 * random.nextDouble();
      boxCm[box] = new double[] {tray[0] * scale, tray[1] * scale, tray[2] * scale};
      boxKg[box] = litres(boxCm[box]) * (0.15 + 0.85 * random.nextDouble());
      boxLitres += litres(boxCm[box]);
    }
    double fill = 0.85;
    double full = 0.70 + 0.15 * random.nextDouble();
    double[][] placeCm = new double[placeCount][];
    double placeLitres = 0;
    for (int at = 0; at < placeCount; at++) {
      placeCm[at] =
          new double[] {
            50 + 60 * random.nextDouble(),
            30 + 30 * random.nextDouble(),
            15 + 30 * random.nextDouble()
          };
      placeLitres += litres(placeCm[at]);
    }
    double scale = Math.cbrt(boxLitres / full / fill / placeLitres);
    for (double[] cm : placeCm) {
      for (int side = 0; side < 3; side++) {
        cm[side] *= scale;
      }
    }
    int[] planted = plant(boxCm, placeCm, fill, random);
    if (planted.length == 0) {
      return Optional.empty();
    }
    return Optional.of(build(boxCm, boxKg, placeCm, planted, fill, random));
  }

  private static int[] plant(double[][] boxCm, double[][] placeCm, double fill, Random random) {
    Integer[] order = new Integer[boxCm.length];
    for (int box = 0; box < order.length; box++) {
      order[box] = box;
    }
    java.util.Arrays.sort(order, Comparator.comparingDouble(box -> -litres(boxCm[box])));
    double[] left = new double[placeCm.length];
    for (int at = 0; at < left.length; at++) {
      left[at] = litres(placeCm[at]) * fill;
    }
    int[] planted = new int[order.length];
    for (int box : order) {
      List<Integer> open = new ArrayList<>();
      for (int at = 0; at < left.length; at++) {
        if (left[at] >= litres(boxCm[box])
            && dimensions(boxCm[box]).fitsInto(dimensions(placeCm[at]))) {
          open.add(at);
        }
      }
      if (open.isEmpty()) {
        return new int[0];
      }
      planted[box] = open.get(random.nextInt(open.size()));
      left[planted[box]] -= litres(boxCm[box]);
    }
    return planted;
  }

  private static Case build(
      double[][] boxCm,
      double[] boxKg,
      double[][] placeCm,
      int[] planted,
      double fill,
      Random random) {
    int placeCount = placeCm.length;
    double[] load = new double[placeCount];
    double[] looseKg = new double[placeCount];
    for (int at = 0; at < placeCount; at++) {
      looseKg[at] = random.nextInt(3) == 0 ? Math.round(30 * random.nextDouble()) / 10.0 : 0;
      load[at] = looseKg[at];
    }
    double tackleKg = 0;
    for (int box = 0; box < boxKg.length; box++) {
      load[planted[box]] += boxKg[box];
    }
    Boats boats = new Boats();
    double side = 0;
    for (int at = 0; at < placeCount; at++) {
      double offset = (random.nextInt(3) - 1) * (35 + 30 * random.nextDouble());
      double station = 40 + 420.0 * (at + random.nextDouble()) / placeCount;
      double limit =
          random.nextDouble() < 0.6 ? 0.5 + load[at] * (1.03 + 0.35 * random.nextDouble()) : 0;
      side += load[at] * offset / 100;
      tackleKg += load[at];
      boolean atHand = random.nextInt(3) == 0;
      boats.compartment("Place " + at, station, offset, limit, atHand, false, placeCm[at]);
    }
    boolean shuffled = random.nextBoolean();
    for (int box = 0; box < boxKg.length; box++) {
      boolean staysPut = random.nextInt(20) == 0;
      boolean atHand = boats.compartments.get(planted[box]).atHand() && random.nextInt(3) == 0;
      int at =
          shuffled && !staysPut && random.nextInt(3) == 0
              ? random.nextInt(placeCount)
              : planted[box];
      Optional<Mass> weight = Optional.of(kg(boxKg[box]));
      boats.box("Box " + box, "Place " + at, weight, staysPut, atHand, boxCm[box]);
    }
    for (int at = 0; at < placeCount; at++) {
      if (looseKg[at] > 0) {
        boats.stock("Loose " + at, "", "Place " + at, 10, looseKg[at] / 10);
      }
    }
    double tolerance = Math.max(Math.abs(side) * 1.02 + 0.01, tackleKg * 0.03 * 0.3);
    boats.sideTolerance(tolerance).fillFactor = fill;
    return new Case(boats.season(), boats.onHand());
  }

  static Dimensions dimensions(double[] cm) {
    return new Dimensions(cm(cm[0]), cm(cm[1]), cm(cm[2]));
  }

  private static double litres(double[] cm) {
    return cm[0] * cm[1] * cm[2] / 1000;
  }
}
