package sparewell.workbook.read;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.season.Box;
import sparewell.season.BoxMove;
import sparewell.workbook.InputSheets;

/** Reads the log of moves and checks of boxes up to the date of analysis, and applies it. */
final class BoxLog {
  private record Entry(
      LocalDate date, String box, Optional<String> compartment, boolean checked, Cell origin) {}

  private final List<Entry> entries = new ArrayList<>();
  final List<BoxMove> moves = new ArrayList<>();

  private BoxLog() {}

  static BoxLog read(Book book, Keys boxes, Keys compartments) {
    BoxLog log = new BoxLog();
    book.each(InputSheets.BOX_LOG, row -> log.add(row, boxes, compartments, book));
    // Rows of one day keep their order.
    log.entries.sort(Comparator.comparing(Entry::date));
    return log;
  }

  private void add(Row row, Keys boxes, Keys compartments, Book book) {
    Optional<LocalDate> date = row.date("Date");
    Optional<String> box = row.key("Box", boxes);
    Optional<String> compartment = row.key("Compartment", compartments);
    boolean checked = row.yes("Checked");
    if (row.failed() || book.isLater(row, date.orElseThrow())) {
      return;
    }
    if (compartment.isEmpty() && !checked) {
      row.say("Compartment", Code.BOX_LOG_SAYS_NOTHING);
      return;
    }
    entries.add(new Entry(date.get(), box.orElseThrow(), compartment, checked, row.origin()));
  }

  void applyTo(Map<String, Box> boxes) {
    for (Entry entry : entries) {
      Box box = boxes.get(entry.box());
      if (entry.compartment().isPresent()) {
        String to = entry.compartment().get();
        moves.add(new BoxMove(entry.date(), box.name(), box.compartment(), to, entry.origin()));
        box = box.in(to);
      }
      boxes.put(box.name(), entry.checked() ? box.checked(entry.date()) : box);
    }
  }
}
