package sparewell.workbook.grid;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/**
 * Date systems, which number the days.
 *
 * @see "ECMA-376 part 1, section 18.17.4.1: day 1 is 1900-01-01 with a 29 February 1900 that never
 *     was, or day 0 is 1904-01-01"
 */
public enum DateSystem {
  FROM_1900,
  FROM_1904;

  private static final LocalDate EPOCH_1904 = LocalDate.of(1904, 1, 1);
  private static final LocalDate BEFORE_LEAP_DAY = LocalDate.of(1899, 12, 31);
  private static final LocalDate AFTER_LEAP_DAY = LocalDate.of(1899, 12, 30);

  /** The day number of a date after February 1900. */
  public long dayNumber(LocalDate date) {
    return ChronoUnit.DAYS.between(this == FROM_1904 ? EPOCH_1904 : AFTER_LEAP_DAY, date);
  }

  /** Date of a day number, without its time of day; absent where it names no day. */
  public Optional<LocalDate> date(double dayNumber) {
    double day = Math.floor(dayNumber + 1e-9);
    if (day < 0 || day > 2_958_465) { // 9999-12-31
      return Optional.empty();
    }
    if (this == FROM_1904) {
      return Optional.of(EPOCH_1904.plusDays((long) day));
    }
    if (day < 1 || day == 60) {
      return Optional.empty();
    }
    return Optional.of((day < 60 ? BEFORE_LEAP_DAY : AFTER_LEAP_DAY).plusDays((long) day));
  }
}
