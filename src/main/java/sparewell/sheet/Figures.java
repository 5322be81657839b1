package sparewell.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.load.LoadReport;
import sparewell.load.LoadReport.PlateLine;
import sparewell.season.Compartment;
import sparewell.sheet.AfterTripSheet.Figure;
import sparewell.spares.OffSeason;
import sparewell.spares.Outlook;
import sparewell.spares.SparesRow;
import sparewell.table.Tone;
import sparewell.units.Length;
import sparewell.units.Spoken;
import sparewell.units.UnitSystem;

/** The figures of the front page. */
final class Figures {
  static final String DATE = "Date of the analysis";

  static final String CHANCE_NOW = "Chance that nothing important runs out";

  private static final double GOOD_CHANCE = 0.9;
  private static final double POOR_CHANCE = 0.5;

  private final Results results;
  private final UnitSystem units;
  private final Map<String, String> before;
  private final List<Figure> figures = new ArrayList<>();

  private Figures(Results results) {
    this.results = results;
    this.units = results.season().settings().units();
    this.before = results.lastRun().map(LastRun::figures).orElse(Map.of());
  }

  static List<Figure> of(Results results) {
    Figures figures = new Figures(results);
    figures.chances();
    figures.losses();
    figures.load();
    figures.log();
    return List.copyOf(figures.figures);
  }

  private void chances() {
    Outlook outlook = results.spares().outlook();
    boolean bought = results.buys().part(false).isEmpty(); // the rest only fills floors
    boolean aboard = bought && results.spares().brings().isEmpty();
    String each = aboard ? "; each lasts with the chance you want." : ".";
    chance(CHANCE_NOW, outlook.nowProbability(), "Of " + Phrase.important(outlook) + each, aboard);
    chance(
        "The same once you brought what lies ashore",
        outlook.afterBringingProbability(),
        "Costs nothing, so do it first.",
        bought);
    chance(
        "The same once you also bought the whole list",
        outlook.afterBuyingProbability(),
        "All of the Buy list: every item then lasts with the chance you want.",
        true);
    long low =
        results.spares().rows().stream()
            .filter(row -> row.runOutNowProbability() > 1 - row.chanceWantedProbability())
            .filter(SparesRow::used)
            .count();
    add(
        "Items that may run out",
        String.valueOf(low),
        "Less likely to last than the chance you want.",
        low == 0 ? Tone.GOOD : Tone.WATCH);
  }

  /** Adds a chance; {@code asAsked} where all that is asked for is aboard, so that it is good. */
  private void chance(String name, OptionalDouble chance, String meaning, boolean asAsked) {
    if (chance.isPresent()) {
      double value = chance.getAsDouble();
      if (asAsked || value >= GOOD_CHANCE) {
        add(name, Phrase.chance(value) + ", good", meaning, Tone.GOOD);
      } else {
        boolean poor = value < POOR_CHANCE;
        String judged = Phrase.chance(value) + (poor ? ", poor" : ", middling");
        add(name, judged, meaning, poor ? Tone.BAD : Tone.WATCH);
      }
    }
  }

  private void losses() {
    results.offSeason().map(OffSeason::total).ifPresent(this::losses);
  }

  private void losses(OffSeason.Lost lost) {
    add(
        "Money lost in the last 12 months",
        Phrase.money(lost.money(), results.season().settings().currency()),
        lost.unpricedPieces() == 0
            ? lost.pieces() + " pieces."
            : Phrase.text(
                "%d pieces, %d of them without a price.", lost.pieces(), lost.unpricedPieces()),
        Tone.NONE);
  }

  private void load() {
    LoadReport load = results.load();
    String least = load.tackleKnown() ? "" : "at least ";
    add(
        "Tackle weight",
        least + Spoken.mass(load.tackle().weightKg(), units),
        load.packs()
            ? Phrase.text(
                "Boxes aboard once packed, and what lies loose; today %s%s.",
                least, Spoken.mass(load.tackleToday(), units))
            : "Boxes aboard with contents, and what lies loose.",
        Tone.NONE);
    load.tackle().centre().ifPresent(this::centre);
    plate("Left to the capacity plate", load.plateTotal());
    plate("Left to the plate's persons line", load.platePersons());
  }

  private void centre(Length centre) {
    Optional<Cell> doubtful = doubtfulPosition();
    add(
        "Tackle centre from the transom",
        Spoken.length(centre, units),
        doubtful
            .map(at -> "Do not trust it: mend the position at " + Phrase.place(at) + " first.")
            .orElse("Smaller is further aft."),
        doubtful.isPresent() ? Tone.BAD : Tone.NONE);
  }

  /** Row of the first compartment that is said to stand outside any boat. */
  private Optional<Cell> doubtfulPosition() {
    Set<Cell> doubted =
        results.findings().stream()
            .filter(finding -> finding.code() == Code.POSITION_DOUBTFUL)
            .map(Finding::at)
            .collect(Collectors.toSet());
    return results.season().compartments().stream()
        .map(Compartment::positionAt)
        .filter(doubted::contains)
        .findFirst();
  }

  private void plate(String name, PlateLine line) {
    if (line.marginKg().isEmpty()) {
      add(name, "not checked", "No plate figure is given in Boat.", Tone.WATCH);
      return;
    }
    String size = Spoken.mass(line.marginKg().get(), units);
    String atMost = line.weightKnown() ? "" : "at most ";
    add(
        name,
        line.over() ? "OVER by " + size : atMost + size + " left",
        "The plate is the limit; carry less in waves or wind.",
        line.over() ? Tone.BAD : Tone.NONE);
  }

  private void log() {
    int lost = results.season().losses().stream().mapToInt(loss -> loss.lostPieces()).sum();
    add(
        "Trips in the log",
        String.valueOf(results.season().trips().size()),
        lost + " pieces lost: what the loss rates rest on.",
        Tone.NONE);
    add(
        DATE,
        results.season().settings().asOf().toString(),
        "Later trips, losses and restocks are not in it.",
        Tone.NONE);
  }

  private void add(String name, String now, String meaning, Tone tone) {
    figures.add(new Figure(name, now, meaning, tone, before.getOrDefault(name, "")));
  }
}
