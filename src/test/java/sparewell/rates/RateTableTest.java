package sparewell.rates;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sparewell.season.SeasonMaker;

/** The lines of the tables of rates and covers, and what they say in words. */
class RateTableTest {
  private static Map<String, StyleRate> rates(SeasonMaker book) {
    Map<String, StyleRate> rates = new TreeMap<>();
    LossModel.fit(book.season()).styles().forEach(rate -> rates.put(rate.style(), rate));
    return rates;
  }

  private static SeasonMaker trips(int count, SeasonMaker book) {
    for (int t = 0; t < count; t++) {
      book.trip("T" + t, t, 8, t % 2 == 0 ? "wood" : "");
    }
    return book;
  }

  @Test
  void figuresAreSumsOverTheTrips() {
    SeasonMaker book =
        trips(3, new SeasonMaker().style("Shad", "Soft", "red").style("Toad", "Soft", "brown"));
    book.thrown("T0", "Shad", 2).thrown("T2", "Shad", 3).lost("T2", "Shad", "red", 4);
    StyleRate shad = rates(book).get("Shad");
    assertEquals("Soft", shad.family());
    assertEquals(StyleRate.Basis.STYLE_HOURS, shad.basis());
    // The second trip has no style hours, so the mean share, (2/8 + 3/8) / 2, of its 8 hours.
    assertEquals(3, shad.trips());
    assertEquals(7.5, shad.usedHours(), 1e-12);
    assertEquals(4, shad.lostPieces());
    assertEquals(40 / 7.5, shad.rawPer10Hours().getAsDouble(), 1e-12);
    StyleRate toad = rates(book).get("Toad");
    assertEquals(StyleRate.Basis.NONE, toad.basis());
    assertEquals(OptionalDouble.empty(), toad.rawPer10Hours());
    assertEquals(0, toad.trips());
    LossModel model = LossModel.fit(book.season());
    CoverEffect wood = model.covers().get(0);
    assertEquals("wood", wood.cover());
    assertEquals(2, wood.trips());
    assertEquals(1, wood.multiplier(), 1e-9, "the only cover is the mix");
  }

  @Test
  void ratesArePer10Hours() {
    SeasonMaker book = new SeasonMaker().style("Shad", "Soft", "red");
    for (int t = 0; t < 200; t++) {
      book.trip("T" + t, t, 8, "").thrown("T" + t, "Shad", 5).lost("T" + t, "Shad", "red", 1);
    }
    StyleRate shad = rates(book).get("Shad");
    // 200 pieces in 1000 hours; without extra variation the standard deviation is 7 %. In as many
    // trips the rate may have wandered as much as that again, or a few
    // times that.
    assertEquals(2, shad.ratePer10Hours().orElseThrow(), 0.05);
    for (double end :
        new double[] {
          2 - shad.low90Per10Hours().orElseThrow(), shad.high90Per10Hours().orElseThrow() - 2
        }) {
      assertTrue(end > 2 * 1.645 * 0.075 * Math.sqrt(2), "end " + end);
      assertTrue(end < 2 * 1.645 * 0.075 * Math.sqrt(8), "end " + end);
    }
    assertTrue(shad.ownShare().orElseThrow() > 0.8);
    assertEquals("", shad.note());
  }

  @Test
  void notesSayWhatARateRestsOn() {
    SeasonMaker book =
        new SeasonMaker().style("Shad", "Soft", "red").style("Toad", "Soft", "brown");
    book.style("Frog", "Top", "black").style("Pike", "Top", "green");
    book.style("Nail", "Iron", "grey").style("Rope", "Cord", "grey");
    book.style("Snag", "Hook", "grey");
    for (int t = 0; t < 9; t++) {
      String id = "T" + t;
      book.trip(id, t, 8, "").thrown(id, "Frog", 1).thrown(id, "Nail", 0.2);
      if (t < 4) {
        book.thrown(id, "Shad", 40).lost(id, "Shad", "red", 30);
      }
      if (t < 5) {
        book.thrown(id, "Snag", 40).lost(id, "Snag", "grey", 30);
      }
    }
    book.planned("Derby", "Toad", 3).planned("Cup", "Rope", 3);
    Map<String, StyleRate> rates = rates(book);
    assertEquals("rests on 4 trips", rates.get("Shad").note());
    assertEquals("", rates.get("Snag").note(), "five are enough");
    assertEquals("never thrown on a logged trip: taken from other Soft", rates.get("Toad").note());
    assertEquals("rests on 9 trips without a loss, leans on other Top", rates.get("Frog").note());
    assertEquals(
        "rests on 9 trips without a loss, leans on the other families", rates.get("Nail").note());
    assertEquals(
        "nothing logged for any Cord: taken from all other styles", rates.get("Rope").note());
  }

  @Test
  void whatIsNeverThrownAndNeverLostHasNoRate() {
    SeasonMaker book = new SeasonMaker().style("Shad", "Soft", "red").style("Net", "Gear", "");
    book.trip("T", 0, 8, "").thrown("T", "Shad", 2).lost("T", "Shad", "red", 1);
    LossModel model = LossModel.fit(book.season());
    StyleRate net = model.styles().get(1);
    assertTrue(net.ratePer10Hours().isEmpty() && net.low90Per10Hours().isEmpty());
    assertTrue(net.high90Per10Hours().isEmpty() && net.ownShare().isEmpty());
    assertTrue(net.rawPer10Hours().isEmpty());
    assertEquals("never thrown and never lost: no rate, only its floor counts", net.note());
    assertEquals(0, model.meanShare("Net"), "so nothing is expected to be lost");
    assertTrue(model.styles().get(0).ratePer10Hours().isPresent());
    // Who plans to throw it wants to know, and its family tells.
    book.planned("Derby", "Net", 3);
    assertTrue(rates(book).get("Net").ratePer10Hours().getAsDouble() > 0);
    // With no hours by style, all styles count for all hours afloat.
    SeasonMaker afloat = new SeasonMaker().style("Net", "Gear", "").trip("T", 0, 8, "");
    assertTrue(rates(afloat).get("Net").ratePer10Hours().isPresent());
  }

  @Test
  void likeStylesLeanOnEachOther() {
    SeasonMaker book = new SeasonMaker();
    for (String style : List.of("A", "B", "C", "D", "E", "F", "G", "H")) {
      book.style(style, "Soft", "red");
    }
    for (int t = 0; t < 6; t++) {
      book.trip("T" + t, t, 8, "");
      for (String style : List.of("A", "B", "C", "D", "E", "F", "G", "H")) {
        book.thrown("T" + t, style, 1);
      }
    }
    for (String style : List.of("A", "B", "C", "D", "E", "F", "G", "H")) {
      book.lost("T2", style, "red", 1);
    }
    rates(book)
        .values()
        .forEach(rate -> assertEquals("rests on 6 trips, leans on other Soft", rate.note()));
  }

  @Test
  void notesOfASmallWorkbook() {
    SeasonMaker empty = new SeasonMaker().style("Shad", "", "red");
    assertEquals(
        "no trips logged yet: a guess made for any angler", rates(empty).get("Shad").note());
    empty.trip("T", 0, 8, "").thrown("T", "Shad", 1);
    assertEquals(
        "rests on 1 trip without a loss, leans on a guess made for any angler",
        rates(empty).get("Shad").note());
    empty.style("Toad", "", "brown");
    assertEquals(
        "rests on 1 trip without a loss, leans on the other styles",
        rates(empty).get("Shad").note());
  }

  @Test
  void aCoverWithoutExposureHasNoEffectThatIsKnown() {
    SeasonMaker book = new SeasonMaker().style("Shad", "Soft", "red").trip("a", 1, 8, "wood");
    book.thrown("a", "Shad", 1).trip("b", 2, 8, "rock").thrown("b", "Nobody", 1);
    List<CoverEffect> covers = LossModel.fit(book.season()).covers();
    assertEquals("rock", covers.get(1).cover());
    assertEquals(1, covers.get(1).trips());
    assertEquals(1, covers.get(1).multiplier(), 1e-6);
    // ln m ~ N(-0.125, 0.5^2): 5 % and 95 % points exp(-0.125 -+ 1.645 * 0.5)
    assertEquals(0.388, covers.get(1).low90(), 0.06);
    assertEquals(2.009, covers.get(1).high90(), 0.3);
  }
}
