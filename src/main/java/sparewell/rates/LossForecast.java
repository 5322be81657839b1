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
   * Chance that no item of the given stocks runs out, with everything that items and styles have in
   * common (style rate, share of the style, unknown hyperparameters, cover) taken into account.
   *
   * @param stocks one for each style
   */
  double nothingRunsOut(List<StyleStock> stocks);

  /**
   * Chances that no item of the given stocks has run out up to and including each of several
   * stages, one after the other, when more is bought between them. Losses of a style at all stages
   * share one rate, which walks on from trip to trip; items share the style's losses; everything
   * that {@link #nothingRunsOut} takes into account is so here. The first chance is that of {@link
   * #nothingRunsOut}, the others have a standard error of at most 2 points, mostly 0.1 to 0.8; more
   * pieces never lower them, apart from that of the first stage.
   *
   * @param stocks one for each style, all with the same number of stages
   * @return one chance for each stage, never rising
   */
  double[] lastsThroughout(List<StagedStock> stocks);

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

    /** A stock that is to last through one stage. */
    static StagedStock of(StyleStock stock) {
      return new StagedStock(stock.style(), List.of(new Stage(stock.exposures(), stock.pieces())));
    }

    /** Stock that is to last through the first stage. */
    StyleStock first() {
      return new StyleStock(style, stages.get(0).exposures(), stages.get(0).pieces());
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

  /**
   * The stock of a style that is to last.
   *
   * @param style name of the style
   * @param exposures what is coming
   * @param pieces pieces at hand of each item watched; an item not named here may run out
   */
  record StyleStock(String style, List<Exposure> exposures, Map<ItemId, Integer> pieces) {
    public StyleStock {
      exposures = List.copyOf(exposures);
      pieces = java.util.Collections.unmodifiableMap(new java.util.TreeMap<>(pieces));
    }
  }
}
