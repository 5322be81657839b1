package sparewell.workbook.demo;

import java.util.List;

/**
 * The demo's trips: date, water, cover, hours over all days, days, flags, note. Flag h: the angler
 * logged no style hours; c: no cover. All waters are made up.
 */
final class DemoTrips {
  static final List<String> LINES =
      """
      2024-09-14 | Lake Quillet        | grass |  8.0 | 1 |   | First trip in the log
      2024-09-21 | Marrowby Reservoir  | rock  |  7.5 | 1 |   |
      2024-09-28 | Osk River           | wood  |  6.0 | 1 | h | Too busy fishing to write
      2024-10-05 | Lake Quillet        | piers |  8.0 | 1 |   |
      2024-10-12 | Marrowby Reservoir  | rock  | 16.0 | 2 |   | Autumn two-day
      2024-10-26 | Tannet Lake         | wood  |  7.0 | 1 |   |
      2024-11-09 | Tannet Lake         | rock  |  6.5 | 1 |   |
      2024-11-23 | Lake Quillet        | piers |  6.0 | 1 | h |
      2024-12-14 | Marrowby Reservoir  | rock  |  5.0 | 1 |   | Cold and slow
      2025-01-18 | Marrowby Reservoir  | open  |  4.5 | 1 |   |
      2025-02-15 | Tannet Lake         | rock  |  5.5 | 1 |   |
      2025-03-01 | Lake Quillet        | piers |  6.5 | 1 |   |
      2025-03-15 | Osk River           | wood  |  7.0 | 1 |   | Water up, much timber
      2025-03-29 | Marrowby Reservoir  | rock  |  8.0 | 1 |   |
      2025-04-05 | Lake Quillet        | grass | 16.0 | 2 |   | Spring two-day
      2025-04-12 | Tannet Lake         | wood  |  7.5 | 1 |   |
      2025-04-26 | Pellam Pool         | wood  |  4.0 | 1 | hc| Evening only
      2025-05-03 | Lake Quillet        | piers |  8.0 | 1 |   |
      2025-05-17 | Osk River           | wood  |  8.0 | 1 |   |
      2025-05-31 | Marrowby Reservoir  | open  |  7.0 | 1 |   |
      2025-06-14 | Lake Quillet        | grass |  8.0 | 1 |   | Frogs all morning
      2025-06-28 | Tannet Lake         | wood  |  6.5 | 1 |   |
      2025-07-12 | Marrowby Reservoir  | rock  |  6.0 | 1 |   |
      2025-07-26 | Lake Quillet        | grass |  5.5 | 1 | h |
      2025-08-09 | Osk River           | wood  |  6.0 | 1 |   |
      2025-08-23 | Marrowby Reservoir  | open  |  6.0 | 1 |   |
      2025-09-06 | Lake Quillet        | grass |  8.0 | 1 |   |
      2025-09-13 | Tannet Lake         | wood  | 16.0 | 2 |   | Club two-day
      2025-09-27 | Marrowby Reservoir  | rock  |  7.5 | 1 | c |
      2025-10-04 | Lake Quillet        | piers |  8.0 | 1 |   |
      2025-10-18 | Osk River           | wood  |  7.0 | 1 |   |
      2025-10-25 | Marrowby Reservoir  | rock  |  7.5 | 1 |   |
      2025-11-08 | Tannet Lake         | rock  |  6.5 | 1 |   |
      2025-11-22 | Lake Quillet        | piers |  6.0 | 1 | h |
      2025-12-13 | Marrowby Reservoir  | rock  |  5.0 | 1 |   |
      2026-01-24 | Tannet Lake         | open  |  4.5 | 1 |   | Ice at the ramp
      2026-02-07 | Marrowby Reservoir  | rock  |  5.5 | 1 |   |
      2026-02-21 | Lake Quillet        | piers |  6.0 | 1 |   |
      2026-03-01 | Osk River           | wood  |  7.0 | 1 | h |
      2026-03-08 | Lake Quillet        | grass |  7.5 | 1 |   |
      """
          .lines()
          .toList();

  private DemoTrips() {}
}
