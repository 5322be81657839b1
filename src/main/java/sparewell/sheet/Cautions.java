package sparewell.sheet;

/** The cautions that stand wherever weight or lead is spoken of, under their heading. */
final class Cautions {
  private Cautions() {}

  static Lines lines() {
    return new Lines()
        .heading("Cautions")
        .small(
            "The capacity plate and the maker's manual are the limit; carry less in waves or wind."
                + " No capacity is computed here.")
        .small("Stowing changes handling: try a new layout at low speed first.")
        .small(
            "Weight, trim and heel are estimates, not a stability assessment, which belongs to a"
                + " qualified surveyor or the maker.")
        .small(
            "Lead: wash hands after handling it. Many places restrict small lead tackle, so check"
                + " the local rules.");
  }
}
