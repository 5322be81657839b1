package sparewell.numerics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
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
      assertEquals(
          pmf, Math.exp(NegativeBinomial.logPmf(k, mean, size)), 1e-12 * pmf, row::toString);
      double above = Math.exp(NegativeBinomial.logAtLeast(k + 1, mean, size));
      assertEquals(1 - row.number("cdf"), above, 1e-12, row::toString);
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

  /** scipy 1.10.1: poisson.logpmf(y, 200) on both sides of where single factors grow large. */
  @ParameterizedTest
  @CsvSource({"255, -10.6411726486513", "256, -10.8880327265831", "300, -25.4106399806569"})
  void atALargeSizeAgreesWithPoissonInScipy(int y, double expected) {
    assertEquals(expected, NegativeBinomial.logPmf(y, 200, 1e15), 1e-10);
  }

  /**
   * mpmath 1.3.0, 40 digits: sum of log1p(j / size) by loggamma; less ln y! (lgamma, Python 3.11).
   */
  @ParameterizedTest
  @CsvSource({
    "400, 0.05, 3190.1327774867708, 2000.5006979832415",
    "5000, 0.7, 39371.702182366752, 37591.14350887677",
    "3000, 40, 10163.261931922646, 21024.024853045546"
  })
  void coefficientsOfManyFactorsLoseNoDigits(int y, double size, double rising, double factorial) {
    assertEquals(rising - factorial, NegativeBinomial.logCoefficient(y, size), 1e-12 * factorial);
  }

  /** scipy 1.10.1: poisson.logsf(y - 1, 2.5). */
  @ParameterizedTest
  @CsvSource({"7, -4.25540723557011", "2, -0.338691189935302"})
  void poissonTailsAgreeWithScipy(int y, double expected) {
    assertEquals(expected, NegativeBinomial.logAtLeast(y, 2.5, 1e15), 1e-12);
  }

  /** mpmath 1.3.0, 40 digits: log of 1 - sum of P(Y = j) below y; tiny sizes fall slowly. */
  @ParameterizedTest
  @CsvSource({
    "6, 2, 0.5, -2.2176531167164977",
    "2, 9, 1.5, -0.13172385095955524",
    "4, 2, 0.001, -5.1579242058513758",
    "2, 5, 0.0015, -4.5456853492744408"
  })
  void eitherTailIsAccurate(int y, double mean, double size, double expected) {
    assertEquals(expected, NegativeBinomial.logAtLeast(y, mean, size), 1e-12);
  }

  /** scipy 1.10.1: nbinom.logsf(y - 1, k, k / (k + m)), equal to log(betainc) within 1e-12. */
  @ParameterizedTest
  @CsvSource({
    "500, 300, 2, -1.8610415539406615",
    "5000, 9000, 0.7, -0.6681425569021578",
    "201, 20, 1.5, -13.061939809535009",
    "900, 1000, 50, -0.2895828716648289"
  })
  void tailsOfLargeCountsAreAccurate(int y, double mean, double size, double expected) {
    assertEquals(expected, NegativeBinomial.logAtLeast(y, mean, size), 2e-11);
  }

  /** mpmath 1.3.0, 60 digits: log of the sum of P(Y = j) from y on, beyond the least double. */
  @ParameterizedTest
  @CsvSource({
    "1000, 1, 1e15, -5913.12717898883",
    "1000, 1, 5, -1768.02500377643",
    "800, 20, 3e4, -2165.30551578658"
  })
  void tailsBelowAnyDoubleGoOn(int y, double mean, double size, double expected) {
    assertEquals(expected, NegativeBinomial.logAtLeast(y, mean, size), 1e-3);
  }

  /** mpmath 1.3.0, 60 digits: log of 1 - sum of P(Y = j) below y, relative. */
  @ParameterizedTest
  @CsvSource({
    "120, 3000, 55, -1.2041315164933416e-51",
    "3, 60, 1e15, -1.6295866529378224e-23",
    "10, 90, 40, -2.7796415100761309e-13"
  })
  void whatIsAllButCertainKeepsItsDigits(int y, double mean, double size, double expected) {
    assertEquals(expected, NegativeBinomial.logAtLeast(y, mean, size), 1e-11 * Math.abs(expected));
  }

  @ParameterizedTest
  @CsvSource({"20, 1.5", "150, 0.7", "150, 1e15", "400, 30"})
  void tailsGoOnWhereCountsAreNoLongerSummed(double mean, double size) {
    double mass = Math.exp(NegativeBinomial.logPmf(200, mean, size));
    double at = Math.exp(NegativeBinomial.logAtLeast(200, mean, size));
    double above = Math.exp(NegativeBinomial.logAtLeast(201, mean, size));
    assertEquals(at - mass, above, 1e-11 * at);
  }

  @Test
  void zeroOrMoreIsCertain() {
    assertEquals(0, NegativeBinomial.logAtLeast(0, 2, 3), 0.0);
    assertEquals(0, NegativeBinomial.logPmf(0, 0, 3), 0.0);
  }

  /** Wide distributions: R 4.2.2, log(pnbinom(y - 1, size, mu = mean, lower.tail = FALSE)). */
  @ParameterizedTest
  @CsvSource({
    "150, 10000, 0.3, -0.248308856841695",
    "200, 60, 1, -3.30586039024211",
    "200, 1000000, 150, -0"
  })
  void tailsOfWideDistributionsAgreeWithR(int y, double mean, double size, double expected) {
    assertEquals(expected, NegativeBinomial.logAtLeast(y, mean, size), 1e-10);
  }
}
