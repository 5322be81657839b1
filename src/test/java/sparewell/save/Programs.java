package sparewell.save;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;

/** Programs outside the project that tests use where they are installed. */
public final class Programs {
  public static final String PYTHON =
      Files.isExecutable(Path.of("/usr/bin/python3")) ? "/usr/bin/python3" : "python3";

  private static final Map<String, Boolean> MODULES = new ConcurrentHashMap<>();

  private Programs() {}

  public static boolean has(String program) {
    for (String folder : System.getenv("PATH").split(java.io.File.pathSeparator)) {
      if (Files.isExecutable(Path.of(folder, program))) {
        return true;
      }
    }
    return false;
  }

  /** Returns whether Python finds a module; asked once for each. */
  public static boolean hasPythonModule(String module) {
    return MODULES.computeIfAbsent(
        module,
        name -> {
          try {
            List<String> command = List.of(PYTHON, "-c", "import " + name);
            return run(Path.of("."), 1, TimeUnit.MINUTES, command) == 0;
          } catch (IOException e) {
            return false;
          }
        });
  }

  /** Starts a class of ours in a process of its own, whose errors are printed with the rest. */
  public static Process java(Class<?> main, List<String> flags, Object... words)
      throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC"));
    command.addAll(flags);
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), main.getName()));
    for (Object word : words) {
      command.add(word.toString());
    }
    return new ProcessBuilder(command).redirectErrorStream(true).start();
  }

  /** Runs to the end; gives the exit code, -1 if it took too long. */
  public static int run(Path folder, long time, TimeUnit unit, List<String> command)
      throws IOException {
    Process process =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    try {
      if (!process.waitFor(time, unit)) {
        process.destroyForcibly();
        return -1;
      }
    } catch (InterruptedException e) {
      process.destroyForcibly();
      Thread.currentThread().interrupt();
      return -1;
    }
    return process.exitValue();
  }
}
