package sparewell.cli;

import sparewell.run.PostRun;
import sparewell.run.RunOptions;

/** Turns ticks and the trip card into rows of the angler's sheets, and analyses. */
final class PostCommand extends Command {
  PostCommand(Console console) {
    super(console, "post");
  }

  @Override
  public Integer call() {
    RunOptions options = options();
    return report(() -> PostRun.run(value("BOOK"), option("--date"), value("--dry-run"), options));
  }
}
