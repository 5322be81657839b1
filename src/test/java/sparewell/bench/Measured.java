package sparewell.bench;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * Time and memory of a whole process.
 *
 * @param wallSeconds from start to end
 * @param processorSeconds time on the processors, to the last look before the end
 * @param peakMib most memory held; 0 where the system does not tell it
 */
record Measured(double wallSeconds, double processorSeconds, double peakMib) {
  /** Runs a command to its end, and fails if it fails. */
  static Measured run(List<String> command, Path folder) throws IOException, InterruptedException {
    File log = folder.resolve("log.txt").toFile();
    long start = System.nanoTime();
    Process process =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(log)
            .start();
    Duration processor = Duration.ZERO;
    double peak = 0;
    while (!process.waitFor(10, TimeUnit.MILLISECONDS)) {
      processor = process.info().totalCpuDuration().orElse(processor);
      peak = Math.max(peak, peak(process.pid()));
    }
    double wall = (System.nanoTime() - start) / 1e9;
    if (process.exitValue() != 0) {
      throw new IOException(command + " failed: " + Files.readString(log.toPath()));
    }
    return new Measured(wall, processor.toMillis() / 1e3, peak);
  }

  private static double peak(long process) {
    Path status = Path.of("/proc/" + process + "/status");
    try {
      for (String line : Files.readAllLines(status)) {
        if (line.startsWith("VmHWM:")) {
          return Long.parseLong(line.replaceAll("\\D", "")) / 1024.0;
        }
      }
    } catch (IOException gone) {
      return 0;
    }
    return 0;
  }
}
