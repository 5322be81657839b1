package sparewell.season;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import sparewell.finding.Cell;

/**
 * A coming event.
 *
 * @param date its first day
 * @param fishedHours hours over all its days, &gt; 0
 * @param days days it takes, &gt; 0
 * @param box name of the box to pack for it; empty where none
 * @param slots pockets of that box, where given
 * @param plan planned styles; empty where there is no plan
 */
public record Event(
    String name,
    LocalDate date,
    String water,
    double fishedHours,
    double days,
    Optional<String> cover,
    String box,
    OptionalInt slots,
    OptionalDouble chanceWantedProbability,
    List<PlanLine> plan,
    Cell origin) {
  public Event {
    plan = List.copyOf(plan);
  }

  /** Its last day; a part of a day takes all of it. */
  public LocalDate lastDay() {
    return date.plusDays((long) Math.ceil(days - 1e-9) - 1);
  }

  public Event withPlan(List<PlanLine> newPlan) {
    return new Event(
        name,
        date,
        water,
        fishedHours,
        days,
        cover,
        box,
        slots,
        chanceWantedProbability,
        newPlan,
        origin);
  }

  /**
   * One style of the plan.
   *
   * @param plannedHours hours it will be thrown, over all rods and anglers, &gt; 0
   * @param colours the colours planned; empty means all in stock
   */
  public record PlanLine(String style, double plannedHours, List<String> colours, Cell origin) {
    public PlanLine {
      colours = List.copyOf(colours);
    }
  }
}
