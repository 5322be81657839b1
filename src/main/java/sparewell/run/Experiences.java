package sparewell.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import sparewell.experience.Entry;
import sparewell.experience.Pool;
import sparewell.experience.file.ExperienceFile;
import sparewell.experience.file.ExperienceFile.NotExperience;
import sparewell.experience.file.LogId;
import sparewell.finding.Cell;
import sparewell.finding.Code;
import sparewell.finding.Finding;
import sparewell.rates.Others;
import sparewell.workbook.value.Names;

/** Files of experience of a run, each read once: the one given, or one beside a workbook. */
public final class Experiences {
  /** Name of a file that is found by itself beside a workbook. */
  public static final String NAME = "experience.csv";

  private final Optional<Path> given;
  private final Map<Path, Known> read = new ConcurrentHashMap<>();

  /** Content of a file, or the reason why it has none. */
  private record Known(
      Optional<ExperienceFile.Reading> reading, Optional<Pool> pool, String fault) {
    static Known of(Path file) {
      try {
        ExperienceFile.Reading reading = ExperienceFile.read(file);
        return new Known(Optional.of(reading), Optional.of(Pool.of(reading.rows())), "");
      } catch (NotExperience none) {
        return unread(none.getMessage());
      } catch (NoSuchFileException missing) {
        return unread(file + ": there is no such file.");
      } catch (IOException disk) {
        return unread(file + " cannot be read from the disk.");
      }
    }

    private static Known unread(String fault) {
      return new Known(Optional.empty(), Optional.empty(), fault);
    }
  }

  /** Uses the file given, or the one beside each workbook, if any. */
  public Experiences(Optional<Path> given) {
    this.given = given;
  }

  private Known known(Path file) {
    return read.computeIfAbsent(file.toAbsolutePath().normalize(), key -> Known.of(file));
  }

  /** Why the file given cannot be used; absent where it can, or none was given. */
  public Optional<String> fault() {
    return given.map(this::known).map(Known::fault).filter(fault -> !fault.isEmpty());
  }

  /** The experience of others for a workbook (where it lies, no copy), without rows of its own. */
  Optional<Others> of(Path book, List<Finding> findings) {
    Path beside = book.toAbsolutePath().resolveSibling(NAME);
    Optional<Path> file = given.or(() -> Optional.of(beside).filter(Files::isRegularFile));
    if (file.isEmpty()) {
      return Optional.empty();
    }
    Known known = known(file.get());
    String name = String.valueOf(file.get().getFileName());
    if (known.reading().isEmpty()) {
      findings.add(Finding.of(Code.EXPERIENCE_NOT_READ, Cell.NOWHERE, name, known.fault()));
      return Optional.empty();
    }
    ExperienceFile.Reading reading = known.reading().get();
    for (ExperienceFile.Fault fault : reading.faults()) {
      findings.add(
          Finding.of(
              Code.EXPERIENCE_LINE, Cell.NOWHERE, name, Long.toString(fault.line()), fault.why()));
    }
    int more = reading.leftOut() - reading.faults().size();
    if (more > 0) {
      findings.add(
          Finding.of(Code.EXPERIENCE_MORE_LINES, Cell.NOWHERE, name, Integer.toString(more)));
    }
    return Optional.of(new Others(without(book, known), name, Names::fold));
  }

  private static Pool without(Path book, Known known) {
    List<Entry> rows = known.reading().orElseThrow().rows();
    try {
      Optional<String> id = LogId.of(book);
      String print = LogId.fingerprint(book);
      boolean own = rows.stream().anyMatch(row -> isOwn(row, id, print));
      return own
          ? Pool.of(rows.stream().filter(row -> !isOwn(row, id, print)).toList())
          : known.pool().orElseThrow();
    } catch (IOException unreadable) {
      return known.pool().orElseThrow(); // the workbook was read, so only the id is in doubt
    }
  }

  private static boolean isOwn(Entry row, Optional<String> id, String print) {
    return id.filter(row.logId()::equals).isPresent() || row.fingerprint().equals(print);
  }
}
