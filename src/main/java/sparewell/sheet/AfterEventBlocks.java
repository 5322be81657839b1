package sparewell.sheet;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import sparewell.rates.record.AfterEvent;
import sparewell.rates.record.AfterEvent.StyleResult;
import sparewell.season.Cause;
import sparewell.season.Event;
import sparewell.season.ItemId;
import sparewell.season.Place;
import sparewell.spares.OffSeason;
import sparewell.spares.OffSeasonPlanner;
import sparewell.stock.Holding;
import sparewell.stock.Homes;
import sparewell.table.Block;
import sparewell.table.Table;
import sparewell.table.Tone;

/** The last event: losses against the forecast, cost, what to put back and what to check. */
final class AfterEventBlocks {
  private static final Columns<StyleResult> COLUMNS = Columns.of("After the event");

  private static final double UNUSUAL = 0.05;
  private static final int MOST_THROWN = 3;

  private AfterEventBlocks() {}

  static List<Block> of(Results results) {
    Optional<AfterEvent> last = results.trackRecord().lastEvent();
    if (last.isEmpty()) {
      return List.of();
    }
    AfterEvent after = last.get();
    Lines lines = new Lines();
    lines.heading("After " + after.event().name() + " (" + after.event().date() + ")");
    lines.plain(cost(results, after));
    withoutHours(results, after).ifPresent(lines::plain);
    unpack(results, after.event()).ifPresent(lines::plain);
    lines.plain(check(results, after));
    return List.of(lines.block(), new Block.Rows(table(after)));
  }

  private static String cost(Results results, AfterEvent after) {
    OffSeason.Lost lost =
        OffSeasonPlanner.cost(results.season(), results.onHand(), after.trip().id());
    double expected = after.styles().stream().mapToDouble(StyleResult::expectedPieces).sum();
    return Phrase.text(
        "You lost %s%s%s; the forecast for the hours thrown was %.1f.",
        Phrase.count(lost.pieces(), "piece"),
        lost.money().signum() == 0
            ? ""
            : " worth " + Phrase.money(lost.money(), results.season().settings().currency()),
        lost.unpricedPieces() > 0 ? " (" + lost.unpricedPieces() + " without a price)" : "",
        expected);
  }

  /** Names what was lost of styles without hours, which no forecast knows. */
  private static Optional<String> withoutHours(Results results, AfterEvent after) {
    Set<String> thrown =
        after.styles().stream().map(StyleResult::style).collect(Collectors.toSet());
    String lost =
        results.season().losses().stream()
            .filter(loss -> loss.trip().equals(after.trip().id()) && loss.lostPieces() > 0)
            .filter(loss -> !thrown.contains(loss.item().style()))
            .map(loss -> loss.lostPieces() + " " + loss.item().spoken())
            .collect(Collectors.joining(", "));
    return lost.isEmpty()
        ? Optional.empty()
        : Optional.of("Lost without hours, so without a forecast: " + lost + ".");
  }

  /** Names what lies in the event's box and belongs elsewhere, unless it is packed again now. */
  private static Optional<String> unpack(Results results, Event event) {
    boolean packedAgain =
        results.packing().lists().stream().anyMatch(list -> list.event().box().equals(event.box()));
    if (event.box().isEmpty() || event.slots().isEmpty() || packedAgain) {
      return Optional.empty();
    }
    Homes homes = new Homes(results.season(), results.onHand(), Set.of(event.box()));
    String back =
        results.onHand().holdings().stream()
            .filter(holding -> holding.place().box().equals(event.box()) && holding.pieces() > 0)
            .map(holding -> words(holding, homes))
            .collect(Collectors.joining("; "));
    return back.isEmpty()
        ? Optional.empty()
        : Optional.of("Unpack " + event.box() + ": " + back + ".");
  }

  private static String words(Holding holding, Homes homes) {
    ItemId item = holding.item();
    String home = homes.of(item).map(Place::name).orElse(EntryTable.OF_CHOICE);
    return holding.pieces() + " " + item.spoken() + " to " + home;
  }

  /** Knots and hooks wear with the hours thrown (common practice, no source). */
  private static String check(Results results, AfterEvent after) {
    String thrown =
        after.styles().stream()
            .sorted((one, other) -> Double.compare(other.hours(), one.hours()))
            .limit(MOST_THROWN)
            .map(StyleResult::style)
            .collect(Collectors.joining(", "));
    String worn =
        results.season().losses().stream()
            .filter(loss -> loss.trip().equals(after.trip().id()))
            .filter(loss -> loss.cause() == Cause.BROKEN || loss.cause() == Cause.WORN)
            .map(loss -> loss.item().style())
            .distinct()
            .collect(Collectors.joining(", "));
    return "Retie and check the hooks of what was thrown most: "
        + thrown
        + (worn.isEmpty() ? "." : "; look over what broke or wore: " + worn + ".");
  }

  private static Table<StyleResult> table(AfterEvent after) {
    return COLUMNS.table(
        after.styles(),
        List.of(
            COLUMNS.column("Style", StyleResult::style),
            COLUMNS.column("Hours", StyleResult::hours),
            COLUMNS.column("Forecast", StyleResult::expectedPieces),
            COLUMNS.column("Lost", StyleResult::lostPieces),
            COLUMNS
                .column("How usual", StyleResult::unusualProbability)
                .toned(one -> one.unusualProbability() < UNUSUAL ? Tone.WATCH : Tone.NONE)));
  }
}
