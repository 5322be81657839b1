package sparewell.check;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Loss;
import sparewell.season.Season;
import sparewell.season.StyleHours;

/** Losses of a style whose hours on that trip are given as 0. */
final class LossWithoutHours implements Rule {

  @Override
  public void check(Season season, Findings findings) {
    Map<List<String>, Double> thrown = new HashMap<>();
    for (StyleHours hours : season.styleHours()) {
      thrown.merge(
          List.of(hours.trip(), hours.style()), hours.thrownHours().orElse(1), Double::sum);
    }
    for (Loss loss : season.losses()) {
      Double hours = thrown.get(List.of(loss.trip(), loss.item().style()));
      if (hours != null && hours == 0 && loss.lostPieces() > 0) {
        findings.add(
            Code.LOSS_WITHOUT_HOURS, loss.origin().under("Lost"), loss.item().style(), loss.trip());
      }
    }
  }
}
