package sparewell.numerics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import sparewell.reference.Reference;

class NegativeBinomialTest {
  @Test
  void agreesWithRInTheBody() {
    List<Reference.Row> rows = Reference.read("negbin-pmf.csv");
    assertTrue(rows.size() > 150);
    for (Reference.Row row : rows) {
      double mean = row.number("mean");
      double size = row.number("size");
      int k = row.whole("k");
      double pmf = row.number("pmf");
      assertEquals(pmf, NegativeBinomial.pmf(k, mean, size), 1e-12 * pmf, row::toString);
      assertEquals(row.number("cdf"), NegativeBinomial.cdf(k, mean, size), 1e-12, row::toString);
    }
  }

  @Test
  void agreesWithRFarOutAndAtLargeSize() {
    for (Reference.Row row : Reference.read("negbin-tails.csv")) {
      double mean = row.number("mean");
      double size = row.number("size");
      int k = row.whole("k");
      double log = row.number("log_pmf");
      assertEquals(log, NegativeBinomial.logPmf(k, mean, size), 1e-11 * Math.abs(log));
      double tail = row.number("upper_tail");
      double ours = Math.exp(NegativeBinomial.logAtLeast(k + 1, mean, size));
      assertEquals(tail, ours, 1e-10 * tail, row::toString);
    }
  }

  @Test
  void quantilesAgreeWithR() {
    List<Reference.Row> rows = Reference.read("negbin-quantile.csv");
    assertEquals(100, rows.size());
    for (Reference.Row row : rows) {
      int ours = NegativeBinomial.quantile(row.number("p"), row.number("mean"), row.number("size"));
      assertEquals(row.whole("n"), ours, row::toString);
    }
  }

  @Test
  void largeSizeIsPoisson() {
    // R 4.2.2: dpois(3, 2) = 0.1804470443154836
    assertEquals(0.1804470443154836, NegativeBinomial.pmf(3, 2, Double.POSITIVE_INFINITY), 1e-15);
    assertEquals(0.1804470443154836, NegativeBinomial.pmf(3, 2, 1e13), 1e-12);
  }

  @Test
  void bothTailsAddUp() {
    for (double mean : new double[] {0.01, 0.7, 5, 90}) {
      for (double size : new double[] {0.1, 1.7, 40}) {
        for (int y = 1; y < 120; y += 7) {
          double above = Math.exp(NegativeBinomial.logAtLeast(y, mean, size));
          assertEquals(1, above + NegativeBinomial.cdf(y - 1, mean, size), 1e-11);
        }
      }
    }
  }

  @Test
  void exactPoissonIntervalsAgreeWithR() {
    for (Reference.Row row : Reference.read("garwood.csv")) {
      PoissonInterval ninety = PoissonInterval.of(row.whole("y"), 0.90);
      PoissonInterval wider = PoissonInterval.of(row.whole("y"), 0.95);
      assertEquals(row.number("lo90"), ninety.low(), 1e-8);
      assertEquals(row.number("hi90"), ninety.high(), 1e-8);
      assertEquals(row.number("lo95"), wider.low(), 1e-8);
      assertEquals(row.number("hi95"), wider.high(), 1e-8);
    }
  }
}
