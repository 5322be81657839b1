package sparewell.save;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.ooxml.SheetEntry;

/**
 * Order of tabs after the run: the angler's unchanged, ours in the place of one of the same name,
 * else in front or behind.
 */
final class SheetList {
  /**
   * One tab of the new list.
   *
   * @param before its position in the old list; empty for a new one
   * @param own our sheet that stands there; empty for one of the angler's
   */
  record Tab(Optional<Integer> before, Optional<OwnSheet> own) {}

  private final List<SheetEntry> old;
  private final List<Tab> tabs = new ArrayList<>();
  private final Map<Integer, Integer> newPosition = new HashMap<>();

  SheetList(List<SheetEntry> old, List<OwnSheet> ours) {
    this.old = old;
    List<OwnSheet> waiting = new ArrayList<>(ours);
    for (int i = 0; i < old.size(); i++) {
      if (!old.get(i).own()) {
        tabs.add(new Tab(Optional.of(i), Optional.empty()));
        continue;
      }
      String key = OwnSheetNames.key(old.get(i).name());
      Optional<OwnSheet> same =
          waiting.stream().filter(o -> OwnSheetNames.key(o.name()).equals(key)).findFirst();
      if (same.isPresent()) {
        waiting.remove(same.get());
        tabs.add(new Tab(Optional.of(i), same));
      }
    }
    int front = 0;
    for (OwnSheet sheet : waiting) {
      tabs.add(
          sheet.front() ? front++ : behind(ours, sheet),
          new Tab(Optional.empty(), Optional.of(sheet)));
    }
    for (int i = 0; i < tabs.size(); i++) {
      int position = i;
      tabs.get(i).before().ifPresent(b -> newPosition.put(b, position));
    }
  }

  /** Just behind our sheet that comes before it, where that stands behind too; else at the end. */
  private int behind(List<OwnSheet> ours, OwnSheet sheet) {
    for (int before = ours.indexOf(sheet) - 1; before >= 0; before--) {
      for (int i = 0; i < tabs.size(); i++) {
        if (tabs.get(i).own().filter(ours.get(before)::equals).isPresent()
            && !ours.get(before).front()) {
          return i + 1;
        }
      }
    }
    return tabs.size();
  }

  List<Tab> tabs() {
    return tabs;
  }

  Optional<Integer> newPosition(int oldPosition) {
    return Optional.ofNullable(newPosition.get(oldPosition));
  }

  /** New position of the active tab; if it is gone, that of the nearest visible one. */
  int active(int oldPosition) {
    for (int distance = 0; distance <= old.size(); distance++) {
      for (int candidate : List.of(oldPosition - distance, oldPosition + distance)) {
        if (newPosition.containsKey(candidate) && (distance == 0 || old.get(candidate).visible())) {
          return newPosition.get(candidate);
        }
      }
    }
    return 0;
  }
}
