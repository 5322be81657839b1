package sparewell.season;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A box whose contents are due for a check.
 *
 * @param dueOn date on which the check was due; absent where it was never checked
 */
public record DueCheck(Box box, Optional<LocalDate> dueOn) {
  /** The boxes to check at the date of analysis, longest overdue first, never checked ones last. */
  public static List<DueCheck> of(Season season) {
    LocalDate today = season.settings().asOf();
    return season.boxes().stream()
        .filter(box -> box.checkEveryDays().isPresent())
        .map(box -> new DueCheck(box, dueOn(box)))
        .filter(check -> check.dueOn().map(due -> !due.isAfter(today)).orElse(true))
        .sorted(
            Comparator.comparing((DueCheck check) -> check.dueOn().orElse(LocalDate.MAX))
                .thenComparing(check -> check.box().name()))
        .toList();
  }

  private static Optional<LocalDate> dueOn(Box box) {
    return box.lastChecked().map(last -> last.plusDays(box.checkEveryDays().getAsInt()));
  }
}
