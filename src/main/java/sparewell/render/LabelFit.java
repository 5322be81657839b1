package sparewell.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import sparewell.table.LabelGrid;
import sparewell.table.LabelGrid.Size;
import sparewell.table.LabelGrid.Words;

/**
 * Fits words to labels: as large as there is room for, not under a least size; what is left goes on
 * to a further label.
 *
 * <p>The least large size, 20 points, has capitals 5 mm high: at two metres about 8 minutes of arc,
 * against 5 for the smallest letters that normal eyes can tell (common practice, no source). A name
 * that would need a second line at that size is set a little smaller, so that less is split.
 */
record LabelFit(List<Words> head, double width, double height) {
  private static final double LINE_OF_FONT = 1.2;
  private static final int STEPS = 20;
  private static final int LEAST_LARGE = 20;
  private static final int LEAST_LARGE_ON_ONE_LINE = 16;

  /** Spare width, for programs whose letters are a little wider. */
  private static final double SPARE = 1.04;

  private static final double TINIEST_SHARE = 0.35;
  private static final double TINIER = 0.93;

  record Fitted(List<Grid.Run> runs, Optional<LabelGrid.Tape> tape, int part, int parts) {}

  /** The label, or as many parts of it as are needed, for so much room in points. */
  static List<Fitted> fit(LabelGrid.Label label, double width, double height) {
    LabelFit fit = new LabelFit(label.head(), width, height);
    List<List<List<Words>>> parts = fit.parts(entries(label.body()));
    List<Fitted> fitted = new ArrayList<>();
    for (List<List<Words>> part : parts) {
      List<Grid.Run> runs = fit.largest(lines(part));
      fitted.add(new Fitted(runs, label.tape(), fitted.size() + 1, parts.size()));
    }
    return fitted;
  }

  private List<List<List<Words>>> parts(List<List<Words>> rest) {
    List<List<List<Words>>> parts = new ArrayList<>();
    do {
      List<List<Words>> part = new ArrayList<>();
      while (!rest.isEmpty() && fits(with(part, rest.get(0)), 0)) {
        part.add(rest.remove(0));
      }
      if (part.isEmpty() && !rest.isEmpty()) {
        List<Words> entry = rest.remove(0);
        List<List<Words>> pieces = fits(List.of(), 0) ? split(entry) : List.of(entry);
        if (pieces.size() > 1) {
          rest.addAll(0, pieces);
          continue;
        }
        part.add(entry); // nothing can be split further: it stands alone and is shrunk below
      }
      parts.add(part);
    } while (!rest.isEmpty());
    return evened(parts);
  }

  /** Lines that belong together: small ones explain the larger one above them. */
  private static List<List<Words>> entries(List<Words> body) {
    List<List<Words>> entries = new ArrayList<>();
    boolean led = false;
    for (Words words : body) {
      boolean small = words.size() == Size.SMALL;
      if (small && led) {
        entries.get(entries.size() - 1).add(words);
      } else {
        entries.add(new ArrayList<>(List.of(words)));
        led = !small;
      }
    }
    return entries;
  }

  /**
   * Parts an entry that is too long for a label of its own. The line that leads it is repeated over
   * the rest, so that no small line stands without what it belongs to, as long as there is room.
   *
   * @return one entry where nothing can be parted
   */
  private List<List<Words>> split(List<Words> entry) {
    Words lead = entry.get(0);
    if (entry.size() == 1) {
      return halves(lead).stream().map(List::of).toList();
    }
    List<Words> small = entry.subList(1, entry.size());
    List<List<Words>> halves =
        small.size() > 1
            ? List.of(
                small.subList(0, small.size() / 2), small.subList(small.size() / 2, small.size()))
            : halves(small.get(0)).stream().map(List::of).toList();
    if (halves.size() == 1 || !fits(List.of(lead), 0)) {
      return entry.stream().map(List::of).toList();
    }
    return halves.stream()
        .map(half -> Stream.concat(Stream.of(lead), half.stream()).toList())
        .toList();
  }

  /** The same number of parts with about as many entries each, where all of them still fit. */
  private List<List<List<Words>>> evened(List<List<List<Words>>> parts) {
    List<List<Words>> all = parts.stream().flatMap(List::stream).toList();
    List<List<List<Words>>> even = new ArrayList<>();
    int from = 0;
    for (int left = parts.size(); left > 0; left--) {
      int to = from + (all.size() - from + left - 1) / left;
      even.add(all.subList(from, to));
      if (!fits(lines(all.subList(from, to)), 0)) {
        return parts;
      }
      from = to;
    }
    return even;
  }

  private static List<Words> lines(List<List<Words>> entries) {
    return entries.stream().flatMap(List::stream).toList();
  }

  private List<Grid.Run> largest(List<Words> body) {
    int largest = -1;
    int tooLarge = STEPS + 1;
    for (int step = STEPS; tooLarge - largest > 1; step = (largest + tooLarge) / 2) {
      if (fits(body, growth(step))) {
        largest = step;
      } else {
        tooLarge = step;
      }
    }
    if (largest >= 0) {
      return runs(body, growth(largest), 1);
    }
    double share = 1;
    while (share > TINIEST_SHARE && high(runs(body, 0, share)) > height) {
      share *= TINIER;
    }
    return runs(body, 0, share);
  }

  private static double growth(int step) {
    return (double) step / STEPS;
  }

  private boolean fits(List<Words> body, double growth) {
    return high(runs(body, growth, 1)) <= height;
  }

  private double high(List<Grid.Run> runs) {
    double high = 0;
    for (Grid.Run run : runs) {
      String text = run.text().strip();
      int lines = TextSize.lines(text, run.points() * SPARE, run.bold(), width);
      high += lines * run.points() * LINE_OF_FONT;
    }
    return high;
  }

  private List<Grid.Run> runs(List<Words> body, double growth, double share) {
    List<Words> all = new ArrayList<>(head);
    all.addAll(body);
    List<Grid.Run> runs = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      Words words = all.get(i);
      double least = least(words);
      double points = (least + growth * (most(words) - least)) * share;
      String text = words.text() + (i < all.size() - 1 ? "\n" : "");
      boolean bold = words.size() != Size.SMALL;
      runs.add(new Grid.Run(text, Math.floor(points * 2) / 2, bold));
    }
    return runs;
  }

  private double least(Words words) {
    return switch (words.size()) {
      case SMALL -> 7.5;
      case MEDIUM -> 11.5; // two entries with their colours still fit a label of 34 mm
      case LARGE -> leastLarge(words.text());
    };
  }

  private double leastLarge(String text) {
    for (int points = LEAST_LARGE; points >= LEAST_LARGE_ON_ONE_LINE; points--) {
      if (TextSize.lines(text, points * SPARE, true, width) == 1) {
        return points;
      }
    }
    return LEAST_LARGE;
  }

  private static double most(Words words) {
    return switch (words.size()) {
      case SMALL -> 11;
      case MEDIUM -> 18;
      case LARGE -> 34;
    };
  }

  private static List<Words> with(List<List<Words>> some, List<Words> one) {
    List<Words> all = new ArrayList<>(lines(some));
    all.addAll(one);
    return all;
  }

  private static List<Words> halves(Words words) {
    String text = words.text();
    int middle = text.length() / 2;
    int before = text.lastIndexOf(' ', middle);
    int after = text.indexOf(' ', middle);
    int at = before <= 0 || after > 0 && after - middle < middle - before ? after : before;
    if (at <= 0) {
      return List.of(words);
    }
    return List.of(
        new Words(text.substring(0, at), words.size()),
        new Words(text.substring(at + 1), words.size()));
  }
}
