package sparewell.run;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntConsumer;
import sparewell.experience.Entry;
import sparewell.experience.Kind;
import sparewell.experience.Unit;
import sparewell.experience.file.ExperienceFile;
import sparewell.experience.file.ExperienceFile.NotExperience;
import sparewell.experience.file.LogId;
import sparewell.ooxml.WorkbookPackage;
import sparewell.ooxml.WorkbookRefused;
import sparewell.rates.OwnRows;
import sparewell.rates.fit.RateFit;
import sparewell.rates.history.SeasonHistory;
import sparewell.save.file.Replacement;
import sparewell.save.file.RunLock;
import sparewell.season.Season;
import sparewell.season.SeasonOrder;
import sparewell.workbook.ReadOptions;
import sparewell.workbook.read.SeasonReader;
import sparewell.workbook.read.UnusableInput;
import sparewell.workbook.value.Names;

/**
 * Puts loss rates of logs into a file of experience that others may have. A workbook whose rows the
 * file holds already, as it stands now, is passed over; rows of an earlier state are replaced; rows
 * of others stay. The file is written anew now and then, so that a run cut short goes on where it
 * was. One run at a time writes it: of two, one would lose what the other added.
 */
public final class ShareRun {
  private static final int WRITTEN_EVERY = 5; // workbooks

  private final Path to;
  private final LocalDate today;
  private final Map<String, List<Entry>> byLog = new LinkedHashMap<>();
  private int unwritten;

  public record Result(List<Outcome> outcomes, List<Entry> rows, Optional<String> fault) {

    /** Logs that the file holds now. */
    public long logs() {
      return rows.stream().map(Entry::logId).distinct().count();
    }
  }

  private ShareRun(Path to, LocalDate today) {
    this.to = to;
    this.today = today;
  }

  /** Reads and fits each workbook on all cores and writes the file. */
  public static Result share(List<Path> books, Path to, LocalDate today, IntConsumer progress) {
    ShareRun run = new ShareRun(to, today);
    try (RunLock lock = RunLock.take(Replacement.place(to))) {
      lock.removeLeftovers();
      Optional<String> fault = run.begin();
      if (fault.isPresent()) {
        return new Result(List.of(), List.of(), fault);
      }
      List<Outcome> outcomes = Batch.each(books, progress, index -> run.book(books.get(index)));
      fault = run.write();
      return new Result(outcomes, run.rows(), fault);
    } catch (WorkbookRefused busy) {
      return new Result(List.of(), List.of(), Optional.of(busy.getMessage()));
    } catch (IOException disk) {
      return new Result(List.of(), List.of(), Optional.of(run.unwritable()));
    }
  }

  /** Takes over what the file holds; a file that is not ours, or partly not, is left alone. */
  private Optional<String> begin() {
    if (!Files.exists(to)) {
      return write();
    }
    try {
      ExperienceFile.Reading reading = ExperienceFile.read(to);
      if (reading.leftOut() > 0) {
        ExperienceFile.Fault first = reading.faults().get(0);
        return Optional.of(
            "%s has lines that cannot be read, the first is line %s: %s. They would be lost:"
                    .formatted(to, first.line(), first.why())
                + " mend or delete them, or give another file. Nothing was written.");
      }
      reading
          .rows()
          .forEach(row -> byLog.computeIfAbsent(row.logId(), id -> new ArrayList<>()).add(row));
      return Optional.empty();
    } catch (NotExperience foreign) {
      return Optional.of(foreign.getMessage() + " It was left as it is; give another file.");
    } catch (IOException disk) {
      return Optional.of(to + " cannot be read. Nothing was written.");
    }
  }

  private Outcome book(Path book) {
    try {
      String print = LogId.fingerprint(book);
      if (holds(LogId.of(book), print)) {
        return there(book);
      }
      List<Entry> rows = rows(book, print);
      if (rows.isEmpty()) {
        return Outcome.done(book, "no trip with hours yet, nothing to share", List.of());
      }
      return add(book, rows);
    } catch (UnusableInput unusable) {
      return Outcome.refused(
          book, "cannot be used yet", book + " cannot be used yet:", unusable.faults());
    } catch (WorkbookRefused refused) {
      return Outcome.refused(book, refused, false);
    } catch (java.nio.file.NoSuchFileException missing) {
      return Outcome.refused(book, "there is no such file. Check its name and folder.");
    } catch (FileAlreadyExistsException taken) {
      return Outcome.refused(
          book,
          taken.getFile()
              + " should hold this log's id, but is not ours. Move it away and run again.");
    } catch (IOException disk) {
      return Outcome.refused(
          book,
          "the file with this log's id cannot be read or written beside it. Check that its folder"
              + " may be written to.");
    }
  }

  private static Outcome there(Path book) {
    return Outcome.done(book, "in the file already", List.of());
  }

  /** True where the file holds a workbook as it stands, be it by the id of a copy. */
  private synchronized boolean holds(Optional<String> id, String print) {
    Optional<String> by =
        byLog.entrySet().stream()
            .filter(log -> log.getValue().get(0).fingerprint().equals(print))
            .map(Map.Entry::getKey)
            .findFirst();
    // Of a log that is there by a copy's id, rows of an earlier state are of no more use.
    by.ifPresent(found -> id.filter(own -> !own.equals(found)).ifPresent(byLog::remove));
    return by.isPresent();
  }

  /** Reads and fits a workbook; its id is made last, where there is something to share. */
  private List<Entry> rows(Path book, String print)
      throws UnusableInput, WorkbookRefused, IOException {
    Season season;
    try (WorkbookPackage original = WorkbookPackage.open(book)) {
      ReadOptions options = ReadOptions.on(today);
      season = SeasonOrder.of(SeasonReader.read(original, options).season());
    }
    SeasonHistory history = SeasonHistory.of(season);
    if (history.uses().isEmpty()) {
      return List.of();
    }
    RateFit fit =
        RateFit.of(history.input(season.settings().asOf(), season.settings().halfLifeMonths()));
    return OwnRows.of(
        fit,
        new OwnRows.Log(
            LogId.make(book),
            print,
            history.trips().stream().mapToInt(trip -> trip.date().getYear()).max().orElseThrow(),
            history.usual().perHourAfloat()
                ? Unit.PIECES_PER_HOUR_AFLOAT
                : Unit.PIECES_PER_HOUR_THROWN,
            history.trips().stream().mapToDouble(trip -> trip.fishedHours().orElse(0)).sum(),
            history.styles(),
            history.families(),
            history.covers()),
        Names::fold);
  }

  private synchronized Outcome add(Path book, List<Entry> rows) {
    String id = rows.get(0).logId();
    if (holds(Optional.of(id), rows.get(0).fingerprint())) {
      return there(book); // a copy, fitted meanwhile
    }
    byLog.put(id, new ArrayList<>(rows));
    unwritten++;
    if (unwritten >= WRITTEN_EVERY) {
      Optional<String> fault = write();
      if (fault.isPresent()) {
        return Outcome.refused(book, fault.get(), List.of(fault.get()));
      }
    }
    long styles = rows.stream().filter(row -> row.key().kind() == Kind.STYLE).count();
    return Outcome.done(book, "shared: " + styles + " styles", List.of());
  }

  private synchronized List<Entry> rows() {
    return byLog.values().stream().flatMap(List::stream).toList();
  }

  /** Writes the file beside its place, behind a link, and puts it there in one step. */
  private synchronized Optional<String> write() {
    try {
      Path place = Replacement.place(to);
      Path fresh =
          place.resolveSibling(
              "." + place.getFileName() + "." + ProcessHandle.current().pid() + ".tmp");
      try {
        Files.writeString(fresh, ExperienceFile.text(rows()));
        Files.move(
            fresh, place, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
      } finally {
        Files.deleteIfExists(fresh);
      }
      unwritten = 0;
      return Optional.empty();
    } catch (WorkbookRefused folder) {
      return Optional.of(folder.getMessage());
    } catch (AtomicMoveNotSupportedException network) {
      return Optional.of(to + " cannot be replaced in one step there. Give a file elsewhere.");
    } catch (IOException disk) {
      return Optional.of(unwritable());
    }
  }

  private String unwritable() {
    return to + " cannot be written. Check that its folder is there and may be written to.";
  }
}
