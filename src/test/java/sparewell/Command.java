package sparewell;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import sparewell.cli.Console;
import sparewell.cli.RootCommand;

/** Runs a command line as the process would, and reads what it wrote. */
public record Command(int exitCode, String out, String error) {
  /** Runs it. */
  public static Command run(Object... arguments) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream error = new ByteArrayOutputStream();
    Console console =
        new Console(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(error, true, StandardCharsets.UTF_8),
            StandardCharsets.UTF_8,
            false,
            Integer.MAX_VALUE);
    String[] texts = new String[arguments.length];
    for (int i = 0; i < arguments.length; i++) {
      texts[i] = arguments[i].toString();
    }
    int code = RootCommand.execute(console, texts);
    return new Command(
        code, out.toString(StandardCharsets.UTF_8), error.toString(StandardCharsets.UTF_8));
  }

  /** Rows of a CSV file with a header. */
  public static List<CSVRecord> rows(Path file) throws java.io.IOException {
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (CSVParser parser = CSVParser.parse(file, StandardCharsets.UTF_8, format)) {
      return new ArrayList<>(parser.getRecords());
    }
  }

  /** Names of the files and folders in a folder, sorted. */
  public static List<String> names(Path folder) throws java.io.IOException {
    try (var inside = Files.list(folder)) {
      return inside.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  /** Content of every file of a folder by name. */
  public static TreeMap<String, String> files(Path folder) throws java.io.IOException {
    TreeMap<String, String> files = new TreeMap<>();
    try (var inside = Files.list(folder)) {
      for (Path file : inside.toList()) {
        files.put(file.getFileName().toString(), Files.readString(file));
      }
    }
    return files;
  }
}
