package sparewell.rates;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import sparewell.experience.Club;
import sparewell.experience.Normal;
import sparewell.rates.fit.Beliefs;
import sparewell.rates.fit.FitInput;
import sparewell.rates.fit.Hyperprior;
import sparewell.rates.fit.RateFit;

/**
 * A fit beside the experience of others: each style's rate lies around its typical rate among
 * anglers, all of an angler's rates may lie higher or lower together, and how far they lie off is
 * fitted with the rest. Heavy tails of both let the own log win where it disagrees.
 */
public final class BesideClub {
  private static final double LEAST_SHIFT = 0.05; // of what all rates of an angler lie off together
  private static final double LEAST_OWN = 0.5; // part of the variance that each has by itself
  private static final double LEAST_DOUBT = 0.2; // of a spread, on its log scale

  /** Spread of typical rates beyond what is known of each; negligible. */
  private static final double TYPICAL = 0.03;

  private static final double TYPICAL_DOUBT = 0.3;

  private BesideClub() {}

  /** Names in the form in which they are compared. */
  public record Names(List<String> styles, List<String> familyOfStyle, List<String> covers) {
    public Names {
      styles = List.copyOf(styles);
      familyOfStyle = List.copyOf(familyOfStyle);
      covers = List.copyOf(covers);
    }
  }

  /**
   * Fits.
   *
   * @param input what was logged
   * @param names of its styles, and of its covers with further ones behind them that may be asked
   *     for
   */
  public static RateFit fit(FitInput input, Club club, Names names) {
    List<Beliefs.Belief> styles = new ArrayList<>();
    for (int s = 0; s < input.styles(); s++) {
      styles.add(belief(club.style(names.styles().get(s), names.familyOfStyle().get(s)).log()));
    }
    List<Beliefs.Belief> covers =
        names.covers().stream()
            .map(
                cover ->
                    belief(
                        club.cover(cover)
                            .orElse(new Normal(0, square(Hyperprior.WEAK.coverSpread())))))
            .toList();
    FitInput each =
        new FitInput(
            IntStream.range(0, input.styles()).boxed().toList(),
            input.styles(),
            names.covers().size(),
            input.observations());
    return RateFit.of(each, prior(club), new Beliefs(styles, covers), RateFit.DRAWS);
  }

  private static Hyperprior prior(Club club) {
    return new Hyperprior(
        0,
        Math.max(LEAST_SHIFT, Math.sqrt(between(club) - own(club)) / Hyperprior.RATE_SPREAD),
        Math.log(TYPICAL),
        TYPICAL_DOUBT,
        logVariation(club),
        Math.hypot(club.logBetweenSpread(), LEAST_DOUBT),
        club.daySize().mean(),
        Math.max(LEAST_DOUBT, Math.sqrt(club.daySize().variance())),
        Hyperprior.WEAK.coverSpread(),
        Hyperprior.WEAK.walk());
  }

  /** Variance of a style's log rate between anglers. */
  private static double between(Club club) {
    return Math.exp(2 * club.logBetween());
  }

  /**
   * The part of that by which each style lies off by itself. What moves all rates of an angler is
   * fitted beside it, so it is taken off before; not all, as few logs tell little of it, and one
   * untrue row may tell anything.
   */
  private static double own(Club club) {
    return Math.max(LEAST_OWN * between(club), between(club) - square(club.shift()));
  }

  /**
   * ln of the coefficient of variation v of a gamma distribution with that variance of the log,
   * &psi;'(1/v&sup2;), which is about v&sup2; + v<sup>4</sup>/2.
   */
  private static double logVariation(Club club) {
    return Math.log(Math.sqrt(1 + 2 * own(club)) - 1) / 2;
  }

  private static Beliefs.Belief belief(Normal normal) {
    return new Beliefs.Belief(normal.mean(), Math.max(0.05, Math.sqrt(normal.variance())));
  }

  private static double square(double x) {
    return x * x;
  }
}
