package sparewell.rates;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The loss rate of a style, pieces per 10 hours at the mix of covers logged.
 *
 * @param style name of the style
 * @param family its family
 * @param basis what its hours are
 * @param trips trips it was used on
 * @param usedHours hours it was used, &ge; 0
 * @param lostPieces pieces lost on trips in the fit
 * @param rawPer10Hours lost pieces per 10 hours; absent where hours are 0
 * @param ratePer10Hours posterior mean of the rate on the next trip; absent, as are the next three,
 *     for a style never thrown, never lost and in no plan, while the log has hours of others
 * @param low90Per10Hours 5 % point of that rate
 * @param high90Per10Hours 95 % point of that rate
 * @param ownShare share of the rate that comes from the style's own history, 0..1
 * @param amongOthers beside the experience of others; absent without any, or without a rate
 * @param note what to bear in mind, in an angler's words; may be empty
 */
public record StyleRate(
    String style,
    String family,
    Basis basis,
    int trips,
    double usedHours,
    int lostPieces,
    OptionalDouble rawPer10Hours,
    OptionalDouble ratePer10Hours,
    OptionalDouble low90Per10Hours,
    OptionalDouble high90Per10Hours,
    OptionalDouble ownShare,
    Optional<AmongOthers> amongOthers,
    String note) {
  /** Kind of hours that a rate is per. */
  public enum Basis {
    /** Hours the style was thrown. */
    STYLE_HOURS("style_hours"),
    /** Hours afloat. */
    TRIP_HOURS("trip_hours"),
    /** No hours at all. */
    NONE("none");

    private final String word;

    Basis(String word) {
      this.word = word;
    }

    /** The word in files. */
    public String word() {
      return word;
    }
  }
}
