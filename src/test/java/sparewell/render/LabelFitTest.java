package sparewell.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sparewell.table.LabelGrid;

class LabelFitTest {
  private static final double WIDTH = 165;
  private static final double HEIGHT = 79;

  private static LabelGrid.Label label(String name, int lines, String line) {
    List<LabelGrid.Words> body = new ArrayList<>();
    for (int i = 0; i < lines; i++) {
      body.add(new LabelGrid.Words(i + " " + line, LabelGrid.Size.SMALL));
    }
    List<LabelGrid.Words> head = List.of(new LabelGrid.Words(name, LabelGrid.Size.LARGE));
    return new LabelGrid.Label(head, body, Optional.empty());
  }

  private static double high(LabelFit.Fitted fitted) {
    return fitted.runs().stream()
        .mapToDouble(
            run ->
                1.2
                    * run.points()
                    * TextSize.lines(run.text().strip(), run.points(), run.bold(), WIDTH))
        .sum();
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 4, 5, 9, 40})
  void nothingIsCutAndEveryPartHasTheHead(int lines) {
    List<LabelFit.Fitted> parts = LabelFit.fit(label("Shelf", lines, "thing"), WIDTH, HEIGHT);
    List<String> body = new ArrayList<>();
    for (LabelFit.Fitted part : parts) {
      assertEquals("Shelf", part.runs().get(0).text().strip());
      assertEquals(parts.size(), part.parts());
      assertTrue(high(part) <= HEIGHT, "height " + high(part));
      part.runs().stream().skip(1).forEach(run -> body.add(run.text().strip()));
    }
    assertEquals(lines, body.size());
    for (int i = 0; i < lines; i++) {
      assertEquals(i + " thing", body.get(i));
    }
  }

  @Test
  void theNameIsAtLeastTwentyPoints() {
    for (LabelFit.Fitted part : LabelFit.fit(label("Shelf", 30, "thing"), WIDTH, HEIGHT)) {
      assertTrue(part.runs().get(0).points() >= 20);
    }
  }

  @Test
  void aShortLabelIsLarge() {
    List<LabelFit.Fitted> parts = LabelFit.fit(label("A1", 1, "x"), WIDTH, HEIGHT);
    assertEquals(1, parts.size());
    assertTrue(parts.get(0).runs().get(0).points() > 30);
  }

  @Test
  void aVeryLongLineIsPartedAtItsWords() {
    String line = "many words in one line ".repeat(40).strip();
    List<LabelFit.Fitted> parts = LabelFit.fit(label("Shelf", 1, line), WIDTH, HEIGHT);
    assertTrue(parts.size() > 1);
    String all =
        parts.stream()
            .flatMap(part -> part.runs().stream().skip(1))
            .map(run -> run.text().strip())
            .collect(Collectors.joining(" "));
    assertEquals("0 " + line, all);
    parts.forEach(part -> assertTrue(high(part) <= HEIGHT));
  }

  @Test
  void aNameTooLongForAnyLabelIsShrunk() {
    String name = "A name that goes on and on without any end in sight ".repeat(3);
    List<LabelFit.Fitted> parts = LabelFit.fit(label(name, 0, ""), WIDTH, HEIGHT);
    assertEquals(1, parts.size());
    assertTrue(high(parts.get(0)) <= HEIGHT);
  }

  @Test
  void coloursNeverStandOnALabelWithoutTheirStyle() {
    List<LabelGrid.Words> body = new ArrayList<>();
    for (int i = 1; i <= 5; i++) {
      body.add(new LabelGrid.Words("Style " + i, LabelGrid.Size.MEDIUM));
      String codes = i == 3 ? "AA · BB · CC · ".repeat(40) + "DD" : "AA · BB";
      body.add(new LabelGrid.Words(codes, LabelGrid.Size.SMALL));
    }
    List<LabelGrid.Words> head = List.of(new LabelGrid.Words("Shelf", LabelGrid.Size.LARGE));
    List<LabelFit.Fitted> parts =
        LabelFit.fit(new LabelGrid.Label(head, body, Optional.empty()), WIDTH, HEIGHT);
    assertTrue(parts.size() > 3);
    for (LabelFit.Fitted part : parts) {
      assertTrue(part.runs().get(1).text().startsWith("Style "), part.runs().get(1).text());
      assertTrue(high(part) <= HEIGHT);
    }
  }
}
