package sparewell.run;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** The workbooks that the program carries along, as {@code workbook-templates} has them. */
final class Templates {
  private Templates() {}

  /**
   * A workbook's content.
   *
   * @param name of the file, one of those that the build puts into the jar
   * @throws IllegalArgumentException if the program carries none of that name
   */
  static byte[] bytes(String name) {
    try (InputStream kept = Templates.class.getResourceAsStream("/sparewell/workbooks/" + name)) {
      if (kept == null) {
        throw new IllegalArgumentException("no workbook of that name is carried along: " + name);
      }
      return kept.readAllBytes();
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }
}
