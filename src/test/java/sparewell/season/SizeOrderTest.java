package sparewell.season;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SizeOrderTest {
  @Test
  void sizesStandBySizeNotByText() {
    for (List<String> sizes :
        List.of(
            List.of("1/4 oz", "3/8 oz", "1/2 oz", "3/4 oz", "1 oz", "1 1/2 oz", "10 oz"),
            List.of("", "#1", "1/0", "3/0", "5/0", "10/0"),
            List.of("3 in", "3.5 in", "4 in", "10 in"),
            List.of("", "2 in", "S", "M", "L", "fat", "slim"),
            List.of("0,5 oz", "0.5 oz", "1/2 oz"))) {
      List<String> mixed = new ArrayList<>(sizes);
      for (int seed = 0; seed < 5; seed++) {
        Collections.shuffle(mixed, new Random(seed));
        mixed.sort(SizeOrder.SMALL_FIRST);
        assertEquals(sizes, mixed);
      }
    }
  }
}
