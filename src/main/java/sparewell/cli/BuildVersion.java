package sparewell.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The version, from the data that the build leaves in the jar. */
public final class BuildVersion implements IVersionProvider {
  @Override
  public String[] getVersion() {
    return new String[] {
      "sparewell " + number(),
      "build " + of("commit") + ", Java " + System.getProperty("java.version")
    };
  }

  static String number() {
    return of("version");
  }

  private static String of(String key) {
    try (InputStream stream =
        BuildVersion.class.getResourceAsStream("/sparewell/build.properties")) {
      Properties build = new Properties();
      build.load(stream);
      return build.getProperty(key, "unknown");
    } catch (IOException damaged) {
      throw new UncheckedIOException(damaged);
    }
  }
}
