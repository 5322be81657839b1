package sparewell.posting;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Optional;
import sparewell.run.Experiences;
import sparewell.run.PostRun;
import sparewell.run.RunOptions;
import sparewell.workbook.ReadOptions;

/** Posts one workbook, in a process of its own that can be killed. */
public final class KilledPost {
  private KilledPost() {}

  /** Arguments: the workbook and the folder for reports. */
  public static void main(String[] arguments) {
    System.out.println("began");
    PostRun.run(Path.of(arguments[0]), Optional.empty(), false, options(arguments[1]));
    System.out.println("posted");
  }

  static RunOptions options(String reports) {
    return new RunOptions(
        LocalDateTime.parse("2026-03-15T10:00:00"),
        Optional.empty(),
        Path.of(reports),
        ReadOptions.on(LocalDate.of(2026, 3, 15)),
        false,
        3,
        false,
        80,
        new Experiences(Optional.empty()),
        "0");
  }
}
