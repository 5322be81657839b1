package sparewell.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ColourCodesTest {
  @Test
  void takesFirstLettersOfWords() {
    assertEquals(
        Map.of("Black Blue", "BB", "White", "WH"), ColourCodes.of(List.of("White", "Black Blue")));
  }

  @Test
  void laterInTheAlphabetGivesWay() {
    assertEquals(
        Map.of("Bone", "BO", "Boulder", "BOU", "Black Blue", "BB", "Brown Black", "BBL"),
        ColourCodes.of(List.of("Boulder", "Bone", "Brown Black", "Black Blue")));
  }

  @Test
  void noColourAndSignsStillGetACode() {
    assertEquals(Map.of("", "X", "#", "X2"), ColourCodes.of(List.of("", "#")));
  }

  @Test
  void codesAreUniqueWhateverTheNames() {
    Random random = new Random(20260315);
    for (int round = 0; round < 200; round++) {
      List<String> colours = new ArrayList<>();
      for (int i = 0; i < 40; i++) {
        StringBuilder name = new StringBuilder();
        for (int j = 0; j < 1 + random.nextInt(6); j++) {
          name.append("ab -ü1".charAt(random.nextInt(6)));
        }
        colours.add(name.toString());
      }
      Map<String, String> codes = ColourCodes.of(colours);
      assertEquals(new HashSet<>(colours).size(), new HashSet<>(codes.values()).size());
      assertTrue(codes.values().stream().noneMatch(String::isEmpty));
    }
  }
}
