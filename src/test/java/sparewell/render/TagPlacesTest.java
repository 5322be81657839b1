package sparewell.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sparewell.table.Drawing;

class TagPlacesTest {
  private static TagPlaces.Box marker(Drawing.Marker marker, double wide, double high) {
    double size = marker.sizeShare() * high;
    return new TagPlaces.Box(
        marker.at().acrossShare() * wide - size / 2,
        marker.at().downShare() * high - size / 2,
        size,
        size,
        0);
  }

  @Test
  void noTagStandsUnderAMarkerOrAnotherTagOrOutside() {
    Random random = new Random(20260308);
    for (int picture = 0; picture < 500; picture++) {
      List<Drawing.Shape> shapes = new ArrayList<>();
      double across = 0.1 + 0.8 * random.nextDouble();
      for (int i = 0; i < 4; i++) { // near each other, as a centre is before and after a plan
        double x = across + 0.02 * random.nextDouble();
        double y = 0.45 + 0.04 * random.nextDouble();
        shapes.add(new Drawing.Tag(new Drawing.Point(x, y), 0.03, "centre " + i, 0.06));
        shapes.add(new Drawing.Marker(new Drawing.Point(x, y), 0.06, Drawing.Mark.DIAMOND));
      }
      TagPlaces places = new TagPlaces(new Drawing("", "", 2, shapes), 540, 270);
      List<TagPlaces.Box> taken = new ArrayList<>();
      for (Drawing.Shape shape : shapes) {
        if (shape instanceof Drawing.Marker mark) {
          taken.add(marker(mark, 540, 270));
        }
      }
      for (Drawing.Shape shape : shapes) {
        if (shape instanceof Drawing.Tag tag) {
          TagPlaces.Box box = places.place(tag, 60, 14);
          assertTrue(box.left() >= 0 && box.left() + 60 <= 540, box.toString());
          for (TagPlaces.Box other : taken) {
            assertEquals(0, box.shared(other), picture + ": " + box + " over " + other);
          }
          taken.add(box);
        }
      }
    }
  }

  @Test
  void aTagKeepsOffAreasCaptionsAndLinesWhereThereIsRoom() {
    Drawing.Area area = new Drawing.Area(new Drawing.Frame(0.5, 0.4, 0.2, 0.2), 0.5, false);
    Drawing.Caption caption =
        new Drawing.Caption(
            new Drawing.Frame(0.2, 0.4, 0.2, 0.2), "a", 0.05, Drawing.Align.LEFT, false, false);
    Drawing.Stroke above =
        new Drawing.Stroke(new Drawing.Point(0.3, 0.45), new Drawing.Point(0.6, 0.45), false, true);
    Drawing.Tag tag = new Drawing.Tag(new Drawing.Point(0.45, 0.5), 0.02, "here", 0.05);
    TagPlaces places =
        new TagPlaces(new Drawing("", "", 2, List.of(area, caption, above, tag)), 540, 270);
    TagPlaces.Box box = places.place(tag, 50, 14);
    TagPlaces.Box shaded = new TagPlaces.Box(0.5 * 540, 0.4 * 270, 0.2 * 540, 0.2 * 270, 0);
    TagPlaces.Box said = new TagPlaces.Box(0.2 * 540, 0.4 * 270, 0.2 * 540, 0.2 * 270, 0);
    assertEquals(0, box.shared(shaded), box.toString());
    assertEquals(0, box.shared(said), box.toString());
    assertTrue(box.top() > 0.45 * 270 || box.top() + 14 < 0.45 * 270, box.toString());
  }
}
