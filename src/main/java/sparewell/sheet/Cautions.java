package sparewell.sheet;

import java.util.List;
import sparewell.table.Block;

/** The cautions that stand wherever weight or lead is spoken of, under their heading. */
final class Cautions {
  static final List<Block.Line> LINES =
      List.of(
          Block.Line.heading("Cautions"),
          Phrase.small(
              "The capacity plate and the maker's manual are the limit; carry less in waves or wind."
                  + " No capacity is computed here."),
          Phrase.small("Stowing changes handling: try a new layout at low speed first."),
          Phrase.small(
              "Weight, trim and heel are estimates, not a stability assessment, which belongs to a"
                  + " qualified surveyor or the maker."),
          Phrase.small(
              "Lead: wash hands after handling it. Many places restrict small lead tackle, so check"
                  + " the local rules."));

  private Cautions() {}
}
