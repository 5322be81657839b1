package sparewell.stow;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sparewell.season.Box;
import sparewell.season.Compartment;
import sparewell.season.Season;
import sparewell.stock.Holding;
import sparewell.stock.OnHand;
import sparewell.units.Mass;

/**
 * Weights of all boxes aboard and of what lies loose aboard, both in the order of their names.
 *
 * @param boxes one for each box in a compartment aboard
 * @param loose one for each compartment aboard that holds loose stock
 */
public record AboardLoads(List<BoxLoad> boxes, List<LooseLoad> loose) {
  public AboardLoads {
    boxes = List.copyOf(boxes);
    loose = List.copyOf(loose);
  }

  /** Adds up what stands in the boxes and lies in the compartments aboard. */
  public static AboardLoads of(Season season, OnHand onHand) {
    Map<String, Tally> inBox = new LinkedHashMap<>();
    Map<String, Tally> inCompartment = new LinkedHashMap<>();
    for (Holding holding : onHand.holdings()) {
      Map<String, Tally> tallies = holding.place().loose() ? inCompartment : inBox;
      tallies.computeIfAbsent(holding.place().name(), name -> new Tally()).add(holding);
    }
    Map<String, Compartment> compartments = season.compartmentsByName();
    List<BoxLoad> boxes = new ArrayList<>();
    for (Box box : new TreeMap<>(season.boxesByName()).values()) {
      Compartment compartment = compartments.get(box.compartment());
      if (compartment != null && !compartment.ashore()) {
        Tally tally = inBox.getOrDefault(box.name(), new Tally());
        Mass weight = box.emptyWeight().orElse(Mass.ZERO).plus(tally.weight);
        boxes.add(
            new BoxLoad(
                box.name(),
                compartment.name(),
                weight,
                tally.unknownPieces,
                box.emptyWeight().isPresent()));
      }
    }
    List<LooseLoad> loose = new ArrayList<>();
    for (Compartment compartment : new TreeMap<>(compartments).values()) {
      Tally tally = inCompartment.get(compartment.name());
      if (!compartment.ashore() && tally != null && tally.pieces > 0) {
        loose.add(
            new LooseLoad(compartment.name(), tally.weight, tally.pieces, tally.unknownPieces));
      }
    }
    return new AboardLoads(boxes, loose);
  }

  private static final class Tally {
    private Mass weight = Mass.ZERO;
    private int pieces;
    private int unknownPieces;

    private void add(Holding holding) {
      pieces += holding.pieces();
      if (holding.weight().isPresent()) {
        weight = weight.plus(holding.weight().get());
      } else {
        unknownPieces += holding.pieces();
      }
    }
  }
}
