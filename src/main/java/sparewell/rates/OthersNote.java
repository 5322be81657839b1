package sparewell.rates;

import sparewell.experience.Club;

/** Note on a rate that may lean on other logs, in an angler's words. */
final class OthersNote {
  private OthersNote() {}

  static String of(Club.Typical typical, String family, int trips, int lost, double ownShare) {
    String logs = typical.anglers() + (typical.anglers() == 1 ? " other log" : " other logs");
    String others =
        switch (typical.source()) {
          case STYLE -> logs;
          case FAMILY -> "other " + family + " of " + logs;
          case OTHERS -> "other families of " + logs;
        };
    if (trips == 0) {
      return "never thrown on a logged trip: taken from " + others;
    }
    String rests = "rests on " + trips + (trips == 1 ? " trip" : " trips");
    if (lost == 0) {
      rests += " without a loss";
    }
    if (ownShare < 0.5) {
      return rests + ", leans on " + others;
    }
    return trips < 5 || lost == 0 ? rests : "";
  }
}
