package sparewell.rates;

import java.util.List;
import java.util.Map;
import sparewell.numerics.CountDistribution;
import sparewell.season.ItemId;

/**
 * Distributions of coming losses. What the later analyses need of the fitted model, and no more, so
 * that they can be checked against distributions known in closed form. Counts are in pieces. A
 * style that the season does not name is the caller's fault: {@link IllegalArgumentException}.
 */
public interface LossForecast {
  /**
   * Mean share of the hours afloat that the style is thrown, &ge; 0; 1 where rates are per hour
   * afloat.
   */
  double meanShare(String style);

  /** True if rates are per hour afloat because no trip has style hours. */
  boolean perHourAfloat();

  /** Pieces of the style lost over all the exposures together. */
  CountDistribution styleLosses(String style, List<Exposure> exposures);

  /**
   * Pieces of each item of a style lost over all the exposures together, those that name it. An
   * item that none with hours names is absent: nothing of it is lost.
   */
  Map<ItemId, CountDistribution> itemLosses(String style, List<Exposure> exposures);

  /**
   * Chances that no item of the given stocks has run out up to and including each of several
   * stages, one after the other, when more is bought between them. Everything that items and styles
   * have in common is taken into account: the style's rate, which walks on from trip to trip, the
   * items' shares, cover, unknown hyperparameters. Off by 0.24 points, root mean square, 1.1 at
   * most of 213 compared; that of a single item at the first stage is exact.
   *
   * @param stocks one for each style, all with the same number of stages
   * @return one chance for each stage, never rising
   */
  double[] lastsThroughout(List<StagedStock> stocks);

  /**
   * The same at one stage; 1 of no stock at all.
   *
   * @param stocks one for each style, of one stage
   */
  default double nothingRunsOut(List<StagedStock> stocks) {
    return stocks.isEmpty() ? 1 : lastsThroughout(stocks)[0];
  }

  /**
   * The stock of a style over several stages.
   *
   * @param style name of the style
   * @param stages in time
   */
  record StagedStock(String style, List<Stage> stages) {
    public StagedStock {
      stages = List.copyOf(stages);
    }

    /**
     * A stock that is to last through one stage.
     *
     * @param pieces as in {@link Stage}
     */
    public static StagedStock of(
        String style, List<Exposure> exposures, Map<ItemId, Integer> pieces) {
      return new StagedStock(style, List.of(new Stage(exposures, pieces)));
    }
  }

  /**
   * One stage, an event or more without a chance to buy between.
   *
   * @param exposures of the style at this stage; {@link Exposure#stepsAhead()} says how far ahead
   * @param pieces pieces of each item watched up to and including this stage: at hand now and
   *     bought by then, none of the losses taken off. An item not named at a stage has what it had
   *     at the one before; one named at none may run out
   */
  record Stage(List<Exposure> exposures, Map<ItemId, Integer> pieces) {
    public Stage {
      exposures = List.copyOf(exposures);
      pieces = java.util.Collections.unmodifiableMap(new java.util.TreeMap<>(pieces));
    }
  }
}
