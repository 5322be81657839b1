package sparewell.rates;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.numerics.CountDistribution;
import sparewell.rates.record.TrackRecord;
import sparewell.season.ItemId;
import sparewell.season.Season;
import sparewell.season.SeasonMaker;

class LossModelTest {
  private static final ItemId RED = new ItemId("Shad", "", "red");
  private static final ItemId BLUE = new ItemId("Shad", "", "blue");
  private static final ItemId BROWN = new ItemId("Toad", "", "brown");

  private static SeasonMaker book() {
    SeasonMaker book =
        new SeasonMaker().style("Shad", "Soft", "red", "blue").style("Toad", "Soft", "brown");
    Random random = new Random(3);
    for (int t = 0; t < 20; t++) {
      String id = "T" + t;
      book.trip(id, 10 * t, 8, t % 2 == 0 ? "wood" : "grass");
      book.thrown(id, "Shad", 2).thrown(id, "Toad", 4);
      if (random.nextInt(3) > 0) {
        book.lost(id, "Shad", random.nextInt(3) > 0 ? "red" : "blue", 1 + t % 2 * 2);
      }
      if (t % 5 == 0) {
        book.lost(id, "Toad", "brown", 1);
      }
    }
    return book;
  }

  private static Exposure hours(double hours, ItemId... among) {
    return new Exposure(hours, 1, Optional.empty(), List.of(among));
  }

  private static StyleRate rate(LossModel model, String style) {
    return model.styles().stream().filter(r -> r.style().equals(style)).findFirst().orElseThrow();
  }

  @Test
  void countsWhatWasLogged() {
    LossModel model = LossModel.fit(book().season());
    StyleRate shad = rate(model, "Shad");
    assertEquals(20, shad.trips());
    assertEquals(40, shad.usedHours(), 1e-12);
    int lost =
        book().losses.stream()
            .filter(loss -> loss.item().style().equals("Shad"))
            .mapToInt(loss -> loss.lostPieces())
            .sum();
    assertEquals(lost, shad.lostPieces());
    assertEquals(10 * lost / 40.0, shad.rawPer10Hours().getAsDouble(), 1e-12);
    assertEquals(StyleRate.Basis.STYLE_HOURS, shad.basis());
    assertEquals(0.25, model.meanShare("Shad"), 1e-12);
    assertEquals(2, model.covers().size());
    assertTrue(model.converged());
    assertFalse(model.perHourAfloat());
  }

  @Test
  void splitRowsAreOneRow() {
    SeasonMaker split = book();
    split.styleHours.clear();
    split.losses.clear();
    SeasonMaker whole = book();
    whole.styleHours.forEach(
        row -> {
          split.thrown(row.trip(), row.style(), row.knownHours() / 4);
          split.thrown(row.trip(), row.style(), row.knownHours() * 3 / 4);
        });
    whole.losses.forEach(
        row -> {
          for (int i = 0; i < row.lostPieces(); i++) {
            split.lost(row.trip(), row.item().style(), row.item().colour(), 1);
          }
        });
    assertEquals(LossModel.fit(whole.season()).styles(), LossModel.fit(split.season()).styles());
  }

  @Test
  void aTripWithoutStyleHoursTakesTheMeanShare() {
    SeasonMaker book = book();
    book.trip("late", 300, 10, "wood").lost("late", "Shad", "red", 1);
    StyleRate shad = rate(LossModel.fit(book.season()), "Shad");
    assertEquals(21, shad.trips());
    assertEquals(40 + 0.25 * 10, shad.usedHours(), 1e-12);
  }

  @Test
  void withoutAnyStyleHoursRatesArePerHourAfloat() {
    SeasonMaker book = book();
    book.styleHours.clear();
    LossModel model = LossModel.fit(book.season());
    assertTrue(model.perHourAfloat());
    assertEquals(1, model.meanShare("Toad"));
    assertEquals(StyleRate.Basis.TRIP_HOURS, rate(model, "Toad").basis());
    assertEquals(160, rate(model, "Toad").usedHours(), 1e-12);
    assertTrue(model.findings().stream().anyMatch(f -> f.code() == Code.NO_STYLE_HOURS));
  }

  @Test
  void aLossWithoutItsHoursIsAssumedAndSaid() {
    SeasonMaker book = book();
    book.trip("odd", 300, 8, "wood").thrown("odd", "Toad", 3).lost("odd", "Shad", "red", 2);
    LossModel model = LossModel.fit(book.season());
    // Mean share over the 21 trips with style hours: 20 x 2/8 and once 0.
    double share = 20 * 0.25 / 21;
    assertEquals(40 + 8 * share, rate(model, "Shad").usedHours(), 1e-9);
    assertTrue(model.findings().stream().anyMatch(f -> f.code() == Code.LOSS_WITHOUT_STYLE_HOURS));
  }

  @Test
  void aTripWithoutHoursIsOutOfTheFit() {
    SeasonMaker book = book();
    List<StyleRate> before = LossModel.fit(book.season()).styles();
    book.trip("none", 300, 0, "wood").lost("none", "Shad", "red", 9);
    StyleRate shad = rate(LossModel.fit(book.season()), "Shad");
    assertEquals(before.get(0).lostPieces(), shad.lostPieces());
    assertEquals(
        before.get(0).ratePer10Hours().orElseThrow(), shad.ratePer10Hours().orElseThrow(), 1e-12);
  }

  @Test
  void anEmptyLogIsAStatedGuess() {
    SeasonMaker book = new SeasonMaker().style("Shad", "Soft", "red");
    LossModel model = LossModel.fit(book.season());
    StyleRate shad = rate(model, "Shad");
    assertTrue(shad.rawPer10Hours().isEmpty());
    assertEquals(StyleRate.Basis.NONE, shad.basis());
    assertEquals(0, shad.ownShare().orElseThrow());
    assertTrue(
        shad.low90Per10Hours().orElseThrow() > 0
            && shad.high90Per10Hours().orElseThrow() > shad.low90Per10Hours().orElseThrow());
    assertTrue(model.findings().stream().anyMatch(f -> f.code() == Code.NO_TRIPS_TO_FIT));
  }

  @Test
  void aSlipOfThePenIsAskedAbout() {
    SeasonMaker book =
        new SeasonMaker().style("Shad", "Soft", "red").style("Toad", "Soft", "brown");
    for (int t = 0; t < 4; t++) {
      book.trip("T" + t, t, 8, "").thrown("T" + t, "Shad", 8).thrown("T" + t, "Toad", 3);
      book.lost("T" + t, "Toad", "brown", t);
    }
    assertTrue(
        LossModel.fit(book.season()).findings().stream()
            .noneMatch(f -> f.code() == Code.LOSS_FAR_OUT));
    book.lost("T1", "Shad", "red", 800);
    LossModel model = LossModel.fit(book.season());
    assertEquals(1, model.findings().stream().filter(f -> f.code() == Code.LOSS_FAR_OUT).count());
    for (StyleRate rate : model.styles()) {
      assertTrue(Double.isFinite(rate.high90Per10Hours().orElseThrow()));
    }
    assertTrue(
        Double.isFinite(model.styleLosses("Shad", List.of(hours(24, RED))).expectedShortage(9)));
  }

  @Test
  void aStyleLeansOnWhatThereIs() {
    SeasonMaker book = new SeasonMaker().style("Shad", "Soft", "red").trip("T", 0, 8, "");
    book.thrown("T", "Shad", 1);
    assertTrue(
        rate(LossModel.fit(book.season()), "Shad").note().endsWith("guess made for any angler"));
    book.style("Toad", "Hard", "brown").thrown("T", "Toad", 1);
    assertTrue(
        rate(LossModel.fit(book.season()), "Shad").note().endsWith("leans on the other families"));
    book.style("Worm", "Soft", "brown").planned("Derby", "Worm", 2);
    LossModel model = LossModel.fit(book.season());
    assertTrue(rate(model, "Shad").note().endsWith("leans on other Soft"));
    assertTrue(rate(model, "Worm").note().endsWith("taken from other Soft"));
  }

  private static CountDistribution losses(LossModel model, ItemId item, List<Exposure> exposures) {
    return model.itemLosses(item.style(), exposures).getOrDefault(item, CountDistribution.none());
  }

  @Test
  void itemsOfAStyleShareItsLosses() {
    LossModel model = LossModel.fit(book().season());
    List<Exposure> both = List.of(hours(12, RED, BLUE));
    CountDistribution style = model.styleLosses("Shad", both);
    CountDistribution red = losses(model, RED, both);
    CountDistribution blue = losses(model, BLUE, both);
    assertEquals(style.mean(), red.mean() + blue.mean(), 1e-9);
    assertTrue(red.mean() > blue.mean());
    // All losses fall on the only item named.
    CountDistribution alone = losses(model, BLUE, List.of(hours(12, BLUE)));
    assertEquals(style.probabilityOf(3), alone.probabilityOf(3), 1e-12);
    assertEquals(0, losses(model, RED, List.of(hours(12, BLUE))).mean());
  }

  @Test
  void severalExposuresAddUp() {
    LossModel model = LossModel.fit(book().season());
    CountDistribution whole =
        model.styleLosses("Shad", List.of(hours(5, RED, BLUE), hours(7, RED, BLUE)));
    assertEquals(
        model.styleLosses("Shad", List.of(hours(12, RED, BLUE))).mean(), whole.mean(), 1e-9);
    // Groups that name different items: the item's mean is the sum over its groups.
    List<Exposure> mixed = List.of(hours(5, RED, BLUE), hours(7, RED));
    double first = losses(model, RED, mixed.subList(0, 1)).mean();
    double second = losses(model, RED, mixed.subList(1, 2)).mean();
    assertEquals(first + second, losses(model, RED, mixed).mean(), 1e-3);
    assertEquals(
        losses(model, BLUE, mixed.subList(0, 1)).atMost(1),
        losses(model, BLUE, mixed).atMost(1),
        1e-12);
  }

  @Test
  void aCoverNeverLoggedChangesNothingOnAverage() {
    LossModel model = LossModel.fit(book().season());
    CountDistribution usual = model.styleLosses("Shad", List.of(hours(12, RED)));
    CountDistribution rock =
        model.styleLosses("Shad", List.of(new Exposure(12, 1, Optional.of("rock"), List.of(RED))));
    assertEquals(usual.mean(), rock.mean(), 0.06 * usual.mean());
    assertTrue(rock.quantile(0.99) > usual.quantile(0.99));
  }

  @Test
  void nothingRunsOutAgreesWithOneItemAlone() {
    LossModel model = LossModel.fit(book().season());
    List<Exposure> both = List.of(hours(12, RED, BLUE));
    for (int n = 0; n < 9; n++) {
      double joint =
          model.nothingRunsOut(List.of(LossForecast.StagedStock.of("Shad", both, Map.of(RED, n))));
      assertEquals(losses(model, RED, both).atMost(n), joint, 1e-6);
    }
  }

  @Test
  void anUnknownStyleIsTheCallersFault() {
    LossModel model = LossModel.fit(book().season());
    assertThrows(IllegalArgumentException.class, () -> model.meanShare("Nobody"));
    assertThrows(
        IllegalArgumentException.class, () -> model.styleLosses("Nobody", List.of(hours(1, RED))));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            model.nothingRunsOut(
                List.of(LossForecast.StagedStock.of("Nobody", List.of(), Map.of(RED, 1)))));
  }

  @Test
  void anEventsCoverThatWasNeverLoggedIsSaid() {
    for (String cover : List.of("rock", "wood")) {
      Season season = book().event("Open", cover).season();
      List<Code> codes = LossModel.fit(season).findings().stream().map(Finding::code).toList();
      assertEquals(
          cover.equals("rock") ? List.of(Code.COVER_NEVER_LOGGED) : List.of(), codes, cover);
    }
  }

  @Test
  void severalStylesTogetherAreBounded() {
    LossModel model = LossModel.fit(book().season());
    List<Exposure> shad = List.of(hours(12, RED, BLUE));
    List<Exposure> toad = List.of(hours(12, BROWN));
    LossForecast.StagedStock a = LossForecast.StagedStock.of("Shad", shad, Map.of(RED, 3, BLUE, 2));
    LossForecast.StagedStock b = LossForecast.StagedStock.of("Toad", toad, Map.of(BROWN, 2));
    double one = model.nothingRunsOut(List.of(a));
    double two = model.nothingRunsOut(List.of(b));
    double both = model.nothingRunsOut(List.of(a, b));
    assertTrue(both >= one + two - 1 && both <= Math.min(one, two), one + " " + two + " " + both);
    // What little they share does not take them far from independence.
    assertEquals(one * two, both, 0.02);
    assertEquals(1, model.nothingRunsOut(List.of()), 1e-12);
    // Two colours together are counted, not multiplied: brute force over the split.
    CountDistribution style = model.styleLosses("Shad", shad);
    assertTrue(one <= style.atMost(5) + 1e-9);
    assertTrue(one >= style.atMost(2) - 1e-9);
  }

  @Test
  void vagueLossesCountForTheStyle() {
    SeasonMaker book = book();
    book.lost("T3", "Shad", "", 2);
    LossModel model = LossModel.fit(book.season());
    assertEquals(
        rate(LossModel.fit(book().season()), "Shad").lostPieces() + 2,
        rate(model, "Shad").lostPieces());
    assertEquals(List.of(), model.findings(), "said where the row is read, once");
  }

  @Test
  void tooLittleHistoryIsSaid() {
    SeasonMaker book = book();
    book.trips.subList(4, 20).clear();
    book.styleHours.removeIf(h -> Integer.parseInt(h.trip().substring(1)) >= 4);
    book.losses.removeIf(l -> Integer.parseInt(l.trip().substring(1)) >= 4);
    TrackRecord record = TrackRecord.of(book.season());
    assertEquals(0, record.lines().get(0).predictions());
    assertTrue(record.lines().get(0).runOutPercent().isEmpty());
    assertTrue(record.sentence().startsWith("Too little history to tell"));
    assertFalse(record.sentence().contains("NaN"));
  }

  @Test
  void aHalfLifeFollowsTheRecentTrips() {
    SeasonMaker book = new SeasonMaker().style("Shad", "Soft", "red");
    for (int t = 0; t < 20; t++) {
      book.trip("T" + t, 20 * t, 8, "").thrown("T" + t, "Shad", 4);
      if (t < 10) {
        book.lost("T" + t, "Shad", "red", 3);
      }
    }
    double plain = LossModel.fit(book.season()).styles().get(0).ratePer10Hours().orElseThrow();
    book.halfLifeMonths = java.util.OptionalDouble.of(3);
    double recent = LossModel.fit(book.season()).styles().get(0).ratePer10Hours().orElseThrow();
    assertTrue(recent < 0.7 * plain, recent + " and " + plain);
  }

  @Test
  void anImpossibleExposureIsRefused() {
    assertEquals(0, new Exposure(0, 0.5, Optional.empty(), List.of()).hours());
    for (double[] bad : new double[][] {{-0.1, 1}, {1, 0}, {Double.NaN, 1}}) {
      assertThrows(
          IllegalArgumentException.class,
          () -> new Exposure(bad[0], bad[1], Optional.empty(), List.of()));
    }
  }
}
