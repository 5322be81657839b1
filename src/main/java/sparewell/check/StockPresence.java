package sparewell.check;

import java.util.HashSet;
import java.util.Set;
import sparewell.finding.Code;
import sparewell.finding.Findings;
import sparewell.season.Restock;
import sparewell.season.Season;
import sparewell.season.StockRow;

/** Styles without stock, boxes without contents, compartments aboard with neither. */
final class StockPresence implements Rule {

  @Override
  public void check(Season season, Findings findings) {
    Set<String> styles = new HashSet<>();
    Set<String> boxes = new HashSet<>();
    Set<String> compartments = new HashSet<>();
    season.boxes().forEach(box -> compartments.add(box.compartment()));
    for (StockRow row : season.stock()) {
      styles.add(row.item().style());
      boxes.add(row.place().box());
      compartments.add(row.place().compartment());
    }
    for (Restock restock : season.restocks()) {
      styles.add(restock.item().style());
      boxes.add(restock.place().box());
      compartments.add(restock.place().compartment());
    }
    season.styles().stream()
        .filter(style -> !styles.contains(style.name()))
        .forEach(s -> findings.add(Code.STYLE_WITHOUT_STOCK, s.origin().under("Style"), s.name()));
    season.boxes().stream()
        .filter(box -> !boxes.contains(box.name()))
        .forEach(b -> findings.add(Code.BOX_WITHOUT_STOCK, b.origin().under("Box"), b.name()));
    season.compartments().stream()
        .filter(c -> !c.ashore() && !compartments.contains(c.name()))
        .forEach(
            c -> findings.add(Code.COMPARTMENT_EMPTY, c.origin().under("Compartment"), c.name()));
  }
}
