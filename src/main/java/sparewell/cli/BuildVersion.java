package sparewell.cli;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The version, from the data that the build leaves in the jar. */
public final class BuildVersion implements IVersionProvider {
  @Override
  public String[] getVersion() throws IOException {
    Properties build = build();
    return new String[] {
      "sparewell " + build.getProperty("version"),
      "build " + build.getProperty("commit") + ", Java " + System.getProperty("java.version")
    };
  }

  static String number() {
    try {
      return build().getProperty("version");
    } catch (IOException lost) {
      return "unknown";
    }
  }

  private static Properties build() throws IOException {
    Properties build = new Properties();
    try (InputStream stream =
        BuildVersion.class.getResourceAsStream("/sparewell/build.properties")) {
      if (stream != null) {
        build.load(stream);
      }
    }
    build.putIfAbsent("version", "unknown");
    build.putIfAbsent("commit", "unknown");
    return build;
  }
}
