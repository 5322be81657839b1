package sparewell.save;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import sparewell.ooxml.PartNames;
import sparewell.ooxml.Relationship;
import sparewell.ooxml.SheetEntry;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;

/**
 * Parts that leave: those of an earlier run's sheets, those of a digital signature, as none
 * outlasts a change, and all that only they refer to.
 *
 * @see "ECMA-376 part 2, section 10 (digital signatures)"
 */
final class LeavingParts {
  private final WorkbookPackage book;
  private final Map<String, Set<String>> targets = new TreeMap<>();

  private LeavingParts(WorkbookPackage book) throws WorkbookRefused {
    this.book = book;
    for (String entry : book.entryNames()) {
      if (PartNames.isRelationships(entry)) {
        String source = PartNames.sourceOf(entry);
        Set<String> found = targets.computeIfAbsent(PartNames.key(source), s -> new TreeSet<>());
        for (Relationship r : book.relationships(source)) {
          if (!r.external() && book.has(r.part())) {
            found.add(PartNames.key(r.part()));
          }
        }
      }
    }
  }

  /** Keys of the entries to leave out, relationship parts included. */
  static Set<String> entries(WorkbookPackage book) throws WorkbookRefused {
    return new LeavingParts(book).drop();
  }

  private Set<String> drop() throws WorkbookRefused {
    Set<String> leaving = new TreeSet<>();
    for (Relationship r : book.relationships("")) {
      if (r.is("digital-signature/origin") && !r.external()) {
        leaving.add(PartNames.key(r.part()));
      }
    }
    Set<String> keptSheets = new TreeSet<>();
    for (SheetEntry sheet : book.sheets()) {
      sheet.partName().ifPresent(p -> (sheet.own() ? leaving : keptSheets).add(PartNames.key(p)));
    }
    leaving.removeAll(keptSheets);
    String workbook = PartNames.key(book.workbookPart());
    Set<String> candidates = reachable(leaving);
    candidates.remove(workbook);
    Map<String, Set<String>> others = new HashMap<>(targets);
    for (String listing : List.of("", workbook)) {
      others.put(listing, new TreeSet<>(targets.getOrDefault(listing, Set.of())));
      others.get(listing).removeAll(leaving);
    }
    for (boolean changed = true; changed; ) {
      changed = false;
      for (Map.Entry<String, Set<String>> source : others.entrySet()) {
        if (!candidates.contains(source.getKey()) && candidates.removeAll(source.getValue())) {
          changed = true;
        }
      }
    }
    Set<String> entries = new TreeSet<>(candidates);
    for (String part : candidates) {
      String relationships = PartNames.key(PartNames.relationshipsOf(part));
      if (book.has(relationships)) {
        entries.add(relationships);
      }
    }
    return entries;
  }

  private Set<String> reachable(Set<String> from) {
    Set<String> seen = new TreeSet<>(from);
    Deque<String> waiting = new ArrayDeque<>(from);
    while (!waiting.isEmpty()) {
      for (String next : targets.getOrDefault(waiting.pop(), Set.of())) {
        if (seen.add(next)) {
          waiting.push(next);
        }
      }
    }
    return seen;
  }
}
