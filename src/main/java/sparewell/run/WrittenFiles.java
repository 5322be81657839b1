package sparewell.run;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sparewell.ooxml.Fingerprint;

/**
 * List of the files that a run wrote into a folder of CSV files; a later run removes no others.
 * Foreign lines and names that no run gives are ignored.
 */
final class WrittenFiles {
  static final String NAME = "written by sparewell.txt";

  private static final String HEAD =
      "The next run writes these files anew and removes those it has no more use for."
          + " Other files in this folder are left alone.";
  private static final Pattern LINE =
      Pattern.compile("(\\d+) (\\d+) (\\d+) ([a-z][a-z-]*(?: \\(\\d+\\))?\\.csv)");

  private final Map<String, Fingerprint> byName = new LinkedHashMap<>();

  /** The folder's list; absent where there is none. */
  static Optional<WrittenFiles> in(Path folder) throws IOException {
    Path file = folder.resolve(NAME);
    if (!Files.isRegularFile(file)) {
      return Optional.empty();
    }
    WrittenFiles written = new WrittenFiles();
    String text = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
    for (String line : text.split("\\R")) {
      Matcher entry = LINE.matcher(line);
      if (entry.matches()) {
        Fingerprint was =
            new Fingerprint(
                Long.parseLong(entry.group(1)),
                Long.parseLong(entry.group(2)),
                Long.parseLong(entry.group(3)));
        written.byName.put(entry.group(4), was);
      }
    }
    return Optional.of(written);
  }

  void add(String name, byte[] content) {
    byName.put(name, Fingerprint.of(content));
  }

  boolean names(String file) {
    return byName.containsKey(file);
  }

  /** Removes files that are listed, not written anew, and unchanged since they were written. */
  void removeAllBut(WrittenFiles anew, Path folder) throws IOException {
    for (Map.Entry<String, Fingerprint> old : byName.entrySet()) {
      Path file = folder.resolve(old.getKey());
      if (!anew.names(old.getKey())
          && Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
          && Fingerprint.of(file).equals(old.getValue())) {
        Files.delete(file);
      }
    }
  }

  void write(Path folder) throws IOException {
    StringBuilder text = new StringBuilder(HEAD).append('\n');
    byName.forEach(
        (name, is) ->
            text.append(is.bytes() + " " + is.crc32() + " " + is.adler32() + " " + name + "\n"));
    Files.writeString(folder.resolve(NAME), text);
  }
}
