package sparewell.cli;

import java.nio.file.Path;
import java.util.List;
import sparewell.run.Batch;
import sparewell.run.RunOptions;

/** Reads workbooks and says what is wrong in them; writes nothing. */
final class CheckCommand extends Command {
  CheckCommand(Console console) {
    super(console, "check");
  }

  @Override
  public Integer call() {
    List<Path> found = Books.expand(value("BOOK"), this);
    RunOptions options = options();
    return Books.report(
        console, value("--quiet"), found.size(), progress -> Batch.check(found, options, progress));
  }
}
