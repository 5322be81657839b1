package sparewell.cli;

import sparewell.run.NewBook;
import sparewell.run.Outcome;

/** Makes a workbook to begin with. */
final class NewCommand extends Command {
  NewCommand(Console console) {
    super(console, "new");
  }

  @Override
  public Integer call() {
    String system = value("--units");
    boolean metric = system.equalsIgnoreCase("metric");
    if (!metric && !system.equalsIgnoreCase("us")) {
      throw wrong("--units must be us or metric, not '" + system + "'.");
    }
    Outcome outcome = NewBook.make(value("FILE"), metric, value("--demo"));
    Books.report(console, false, outcome);
    return outcome.exitCode();
  }
}
