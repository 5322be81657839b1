package sparewell.stow;

import java.util.List;
import sparewell.finding.Finding;
import sparewell.season.Compartment;

/** Why nothing is planned. */
public sealed interface Refusal {
  /**
   * Compartments that are said to stand outside any boat: a plan would rest on nothing.
   *
   * @param places at least one
   */
  record Outside(List<Compartment> places) implements Refusal {
    public Outside {
      places = List.copyOf(places);
    }
  }

  /**
   * Every plan that was tried breaks a limit.
   *
   * @param finding which of them, and what is in the way
   */
  record Conflict(Finding finding) implements Refusal {}
}
