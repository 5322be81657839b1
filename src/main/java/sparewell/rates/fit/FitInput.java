package sparewell.rates.fit;

import java.util.Arrays;
import java.util.List;

/**
 * The numbers a fit rests on, free of names.
 *
 * @param familyOfStyle number of the family of each style, from 0
 * @param families number of families
 * @param covers number of categories of cover logged
 * @param observations one for each style and trip with exposure
 */
public record FitInput(
    List<Integer> familyOfStyle, int families, int covers, List<Observation> observations) {
  public FitInput {
    familyOfStyle = List.copyOf(familyOfStyle);
    observations = List.copyOf(observations);
  }

  /** Number of styles. */
  public int styles() {
    return familyOfStyle.size();
  }

  /** Share of the logged hours in each category of cover; all alike where none was logged. */
  double[] mix() {
    double[] mix = mixLogged();
    if (Arrays.stream(mix).sum() == 0) {
      Arrays.fill(mix, 1.0 / covers);
    }
    return mix;
  }

  /** The same, but all 0 where none was logged. */
  double[] mixLogged() {
    double[] hours = new double[covers];
    double all = 0;
    for (Observation observation : observations) {
      if (observation.cover() >= 0) {
        hours[observation.cover()] += observation.hours();
        all += observation.hours();
      }
    }
    for (int c = 0; c < covers; c++) {
      hours[c] = all > 0 ? hours[c] / all : 0;
    }
    return hours;
  }
}
