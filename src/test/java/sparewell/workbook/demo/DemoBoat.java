package sparewell.workbook.demo;

import java.util.List;
import sparewell.units.Length;
import sparewell.units.LengthUnit;
import sparewell.units.Mass;
import sparewell.units.MassUnit;

/**
 * The demo's boat, about 19 ft long, with its compartments, boxes and loads. All figures are made
 * up at a plausible size; the stow is as an angler might leave it, heavy jigs and weights forward
 * and half of the light hard baits aft.
 *
 * <p>The large lockers are in the front deck. Jigs and terminal tackle lie in small flat cases,
 * sealed against rust, hard baits in large deep ones, as they take far more room for their weight:
 * with room as the only limit the former belong aft and the latter forward.
 */
final class DemoBoat {
  static final String ROD_LOCKER = "Port rod locker";
  static final String BOW = "Bow locker";
  static final String FRONT = "Starboard front locker";
  static final String STEP = "Step box";
  static final String SEAT = "Under-seat bin";
  static final String PORT_REAR = "Port rear locker";
  static final String STARBOARD_REAR = "Starboard rear locker";
  static final String GARAGE = "Garage shelf";

  static final String DAY_BOX = "Day box";
  static final String TOOL_BAG = "Tool bag";

  /** A compartment: station and offset of its centre, inner size in in, most load in lb. */
  record Bay(
      String name,
      double fromTransom,
      double fromCentreline,
      double length,
      double width,
      double height,
      double maxLoad,
      boolean atHand,
      boolean ashore) {}

  /** A box: outer size in in, empty weight in lb; {@code checkEvery} in days, 0 for never. */
  record Case(
      String name,
      String bay,
      double length,
      double width,
      double height,
      double emptyWeight,
      String tape,
      boolean staysPut,
      boolean atHand,
      String lastChecked,
      int checkEvery) {}

  /** A load that is not tackle: lb, in. */
  record Weight(
      String name, double pounds, double fromTransom, double fromCentreline, String kind) {}

  static final List<Bay> BAYS =
      List.of(
          new Bay(ROD_LOCKER, 150, -22, 92, 14, 10, 60, false, false),
          new Bay(BOW, 178, 0, 18, 12, 8, 50, false, false),
          new Bay(FRONT, 142, 23, 24, 14, 10, 60, false, false),
          new Bay(STEP, 122, 0, 16, 12, 4, 25, true, false),
          new Bay(SEAT, 92, 13, 12, 9, 4.5, 25, true, false),
          new Bay(PORT_REAR, 52, -27, 18, 12, 7, 60, false, false),
          new Bay(STARBOARD_REAR, 52, 27, 18, 12, 7, 60, false, false),
          new Bay(GARAGE, 0, 0, 48, 20, 60, 200, false, true));

  static final List<Case> CASES =
      List.of(
          box("Squarebills", STARBOARD_REAR, 14, 9, 3.25, 0.9, "blue"),
          box("Lipless", FRONT, 14, 9, 3.25, 0.9, "blue"),
          box("Divers", PORT_REAR, 14, 9, 5, 1.1, "blue"),
          box("Jerkbaits", FRONT, 14, 9, 3.25, 0.9, "yellow"),
          box("Walkers", FRONT, 14, 9, 3.25, 0.9, "yellow"),
          box("Poppers", STARBOARD_REAR, 14, 9, 2, 0.7, "yellow"),
          box("Frogs", PORT_REAR, 11, 7, 2.5, 0.7, "yellow"),
          box("Spinnerbaits", STARBOARD_REAR, 12, 8, 2.25, 0.9, "white"),
          new Case("Bladed jigs", STEP, 11, 7, 1.8, 0.8, "white", false, true, "", 0),
          box("Football jigs", BOW, 11, 7, 1.8, 0.8, "red"),
          box("Flipping jigs", BOW, 11, 7, 1.8, 0.8, "red"),
          box("Finesse jigs", BOW, 11, 7, 1.8, 0.8, "red"),
          box("Stick worms", BOW, 12, 9, 3.5, 0.7, "green"),
          box("Ribbon worms", PORT_REAR, 12, 9, 3.5, 0.7, "green"),
          box("Finesse worms", BOW, 12, 8, 2.5, 0.5, "green"),
          box("Creatures", FRONT, 12, 8, 3, 0.6, "green"),
          box("Craws", STARBOARD_REAR, 12, 8, 2.5, 0.5, "green"),
          box("Paddle tails", FRONT, 12, 9, 3.5, 0.7, "green"),
          new Case("Tubes", FRONT, 12, 8, 2.5, 0.5, "green", true, false, "", 0),
          box("Hooks", BOW, 11, 7, 1.8, 0.8, "black"),
          box("Weights", BOW, 11, 7, 1.8, 0.8, "black"),
          new Case(DAY_BOX, STEP, 14, 9, 2, 0.7, "orange", false, true, "2026-03-01", 14),
          new Case(TOOL_BAG, SEAT, 11, 7, 3.5, 0.8, "orange", true, true, "2025-08-30", 180),
          new Case("Spare hard baits", GARAGE, 14, 9, 3.25, 0.9, "", false, false, "", 0),
          new Case("Spare plastics", GARAGE, 16, 11, 7, 1.5, "", false, false, "", 0),
          new Case("Spare metal", GARAGE, 14, 9, 3.25, 0.9, "", false, false, "", 0));

  static final List<Weight> WEIGHTS =
      List.of(
          new Weight("Hull with deck and seats", 1450, 92, 0, "hull"),
          new Weight("Outboard motor", 480, -14, 0, "motor"),
          new Weight("Angler", 190, 84, 13, "person"),
          new Weight("Partner", 175, 84, -13, "person"),
          new Weight("Fuel, tank two thirds full", 165, 40, 0, "fuel"),
          new Weight("Starting battery", 52, 16, 10, "battery"),
          new Weight("Trolling batteries", 156, 18, -6, "battery"),
          new Weight("Trolling motor", 66, 216, -4, "gear"),
          new Weight("Water in the livewell", 133, 60, 0, "gear"),
          new Weight("Life jackets, ropes, anchor", 38, 160, -10, "gear"));

  private DemoBoat() {}

  /** Home of a style: a box, or a compartment it lies loose in. */
  static String homeOf(String style) {
    return switch (style) {
      case "Squarebill crankbait" -> "Squarebills";
      case "Lipless crankbait" -> "Lipless";
      case "Deep crankbait", "Medium crankbait" -> "Divers";
      case "Suspending jerkbait" -> "Jerkbaits";
      case "Walking topwater" -> "Walkers";
      case "Popper" -> "Poppers";
      case "Hollow frog" -> "Frogs";
      case "Spinnerbait", "Buzzbait" -> "Spinnerbaits";
      case "Bladed jig" -> "Bladed jigs";
      case "Football jig" -> "Football jigs";
      case "Flipping jig" -> "Flipping jigs";
      case "Finesse jig", "Swim jig" -> "Finesse jigs";
      case "Stick worm" -> "Stick worms";
      case "Ribbon tail worm" -> "Ribbon worms";
      case "Finesse worm" -> "Finesse worms";
      case "Creature bait" -> "Creatures";
      case "Craw trailer" -> "Craws";
      case "Paddle tail" -> "Paddle tails";
      case "Tube" -> "Tubes";
      case "Offset worm hook", "Ball head jig" -> "Hooks";
      case "Bullet weight", "Drop shot weight" -> "Weights";
      case "Hand tool" -> TOOL_BAG;
      default -> ROD_LOCKER;
    };
  }

  /** Box at home that holds spares of a family. */
  static String shelfOf(String family) {
    return switch (family) {
      case DemoTackle.CRANKBAITS, DemoTackle.TOPWATER -> "Spare hard baits";
      case DemoTackle.PLASTICS -> "Spare plastics";
      default -> "Spare metal";
    };
  }

  static Length inches(double inches) {
    return Length.of(inches, LengthUnit.INCH);
  }

  static Mass pounds(double pounds) {
    return Mass.of(pounds, MassUnit.POUND);
  }

  private static Case box(
      String name,
      String bay,
      double length,
      double width,
      double height,
      double emptyWeight,
      String tape) {
    return new Case(name, bay, length, width, height, emptyWeight, tape, false, false, "", 0);
  }
}
