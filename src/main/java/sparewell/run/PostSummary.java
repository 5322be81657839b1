package sparewell.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sparewell.posting.PostedRow;
import sparewell.posting.Posting;
import sparewell.workbook.InputColumn;

/** Words printed about a posting. */
final class PostSummary {
  private PostSummary() {}

  static List<String> dry(Posting posting) {
    if (posting.rows().isEmpty()) {
      return List.of(
          "Nothing to post: no Done cell is ticked, and the trip card is blank. Nothing was"
              + " written.");
    }
    List<String> lines = new ArrayList<>();
    posting.rows().forEach(row -> lines.add(row(row)));
    lines.add("Dry run: nothing was written.");
    return lines;
  }

  static String row(PostedRow row) {
    return row.sheet().columns().stream()
        .map(InputColumn::name)
        .filter(row.values()::containsKey)
        .map(name -> row.values().get(name))
        .collect(Collectors.joining(" | ", row.sheet().name() + ": ", ""));
  }

  static List<String> done(Map<String, Integer> posted) {
    return List.of(
        posted.entrySet().stream()
            .map(sheet -> rows(sheet.getValue()) + " of " + sheet.getKey())
            .collect(Collectors.joining(", ", "Posted: ", ".")));
  }

  private static String rows(int count) {
    return count + (count == 1 ? " row" : " rows");
  }
}
