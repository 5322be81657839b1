package sparewell.sheet;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sparewell.spares.BuyList;

/** A buy list in words, the same on every sheet and on the console. */
final class BuyWords {
  private BuyWords() {}

  /** Lines to buy now that lower the expected shortage, or that only fill floors. */
  static List<BuyList.Line> bought(BuyList list, boolean fills) {
    return list.part(fills).stream().filter(BuyList.Line::bought).toList();
  }

  static String wares(List<BuyList.Line> lines) {
    return wares(lines, BuyList.Line::packs, BuyList.Line::pieces);
  }

  /** Packs and single pieces in all, like {@code 4 packs and 2 pieces}. */
  static <T> String wares(List<T> lines, ToIntFunction<T> packs, ToIntFunction<T> pieces) {
    Map<Boolean, Integer> single =
        lines.stream()
            .collect(
                Collectors.partitioningBy(
                    line -> packs.applyAsInt(line) == pieces.applyAsInt(line),
                    Collectors.summingInt(packs)));
    return Stream.of(
            Phrase.count(single.get(false), "pack"), Phrase.count(single.get(true), "piece"))
        .filter(part -> !part.startsWith("0 "))
        .collect(Collectors.joining(" and "));
  }

  /** Money for lines, as far as prices are known; absent where none is. */
  static Optional<BigDecimal> cost(List<BuyList.Line> lines) {
    return lines.stream().map(BuyList.Line::cost).flatMap(Optional::stream).reduce(BigDecimal::add);
  }

  /** A price like {@code for 33.00 USD}, with what has no price told. */
  static String price(List<BuyList.Line> lines, BuyList list) {
    long unpriced = lines.stream().filter(line -> line.cost().isEmpty()).count();
    return cost(lines)
            .map(money -> " for " + Phrase.money(money, list.currency()))
            .orElse(lines.size() == 1 ? ", price not known" : ", prices not known")
        + (unpriced > 0 && unpriced < lines.size() ? " and what has no price yet" : "");
  }

  /** Effect of the needed lines; {@code take} is take or takes, as it fits the words before. */
  static String effect(BuyList list, String take) {
    var before = list.without().nothingRunsOutProbability();
    var after = list.needed().nothingRunsOutProbability();
    if (after.isPresent() && after.getAsDouble() - before.orElse(0) >= 0.0005) {
      return take
          + " the chance that nothing important runs out "
          + Phrase.fromTo(before.getAsDouble(), after.getAsDouble());
    }
    return Phrase.text(
        "%s the pieces you expect to miss from %.2f to %.2f",
        take, list.without().shortagePieces(), list.needed().shortagePieces());
  }

  /** Words like {@code 24 more lines, 214.00 USD, only fill floors}; empty where there are none. */
  static String fills(BuyList list) {
    List<BuyList.Line> fills = bought(list, true);
    if (fills.isEmpty()) {
      return "";
    }
    boolean more = !bought(list, false).isEmpty();
    return Phrase.count(fills.size(), more ? "more line" : "line")
        + cost(fills).map(money -> ", " + Phrase.money(money, list.currency()) + ",").orElse("")
        + (fills.size() == 1 ? " only fills a floor" : " only fill floors");
  }
}
