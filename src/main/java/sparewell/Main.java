package sparewell;

import sparewell.cli.Console;
import sparewell.cli.RootCommand;

/** Entry point. */
public final class Main {
  private Main() {}

  /** Runs the command line and ends the process with its exit code. */
  public static void main(String[] arguments) {
    System.exit(RootCommand.execute(Console.ofProcess(), arguments));
  }
}
