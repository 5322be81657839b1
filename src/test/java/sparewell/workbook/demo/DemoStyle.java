package sparewell.workbook.demo;

import java.util.List;
import sparewell.units.Mass;
import sparewell.units.MassUnit;

/**
 * A style of the demo's tackle, with what the simulator knows about it.
 *
 * @param name trade name of the kind of lure, no model
 * @param family its family
 * @param lossesPer10Hours true loss rate in cover of multiplier 1; 0 where nothing is ever lost
 * @param popularity how often it is thrown beside others; 0 where never by itself
 * @param firstMonth first month in which it is thrown
 * @param lastMonth last month; before the first where the season spans the new year
 * @param piecesPerPack pieces in a pack; 1 where counted in pieces
 * @param price price of a pack in whole and hundredth units
 * @param carryAtLeast the angler's floor in counting units; below 0 where left to the setting
 * @param neededAtOnce rods and tools in use together
 * @param spareFactor factor on it
 * @param importance how much a missing piece matters
 * @param sizes its sizes; the first one's weight is the style's
 * @param colours its colours; one empty text where it has none
 */
record DemoStyle(
    String name,
    String family,
    double lossesPer10Hours,
    double popularity,
    int firstMonth,
    int lastMonth,
    int piecesPerPack,
    double price,
    int carryAtLeast,
    int neededAtOnce,
    double spareFactor,
    double importance,
    List<Size> sizes,
    List<String> colours) {

  /** A size as called in the two unit systems, and the mass of a piece of it. */
  record Size(String us, String metric, double ounces) {
    Mass mass() {
      return Mass.of(ounces, MassUnit.OUNCE);
    }
  }

  /** An item: one size and one colour of a style. */
  record Item(DemoStyle style, Size size, String colour) {}

  boolean packs() {
    return piecesPerPack > 1;
  }

  /** The style in these colours (a comma list, empty for none) and sizes. */
  DemoStyle sized(String colourList, Size... itsSizes) {
    return new DemoStyle(
        name,
        family,
        lossesPer10Hours,
        popularity,
        firstMonth,
        lastMonth,
        piecesPerPack,
        price,
        carryAtLeast,
        neededAtOnce,
        spareFactor,
        importance,
        List.of(itsSizes),
        List.of(colourList.split(",", -1)));
  }

  /** Returns true if the style is thrown in that month of the year, 1 to 12. */
  boolean inSeason(int month) {
    return firstMonth <= lastMonth
        ? month >= firstMonth && month <= lastMonth
        : month >= firstMonth || month <= lastMonth;
  }

  /** Its items, sizes first. */
  List<Item> items() {
    return sizes.stream()
        .flatMap(size -> colours.stream().map(colour -> new Item(this, size, colour)))
        .toList();
  }
}
