package sparewell.cli;

import java.nio.file.Path;
import java.util.List;
import sparewell.run.Batch;
import sparewell.run.RunOptions;

/** Reads workbooks, works everything out, writes the answers back. */
final class AnalyseCommand extends Command {
  AnalyseCommand(Console console) {
    super(console, "analyse");
  }

  @Override
  public Integer call() {
    RunOptions options = options();
    List<Path> found = Books.expand(value("BOOK"), this);
    if (options.out().isPresent() && found.size() > 1) {
      throw wrong("--out takes one workbook, not " + found.size() + ".");
    }
    return Books.report(
        console,
        value("--quiet"),
        found.size(),
        progress -> Batch.analyse(found, options, progress));
  }
}
