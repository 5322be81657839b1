package sparewell.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sparewell.save.Programs;
import sparewell.units.UnitSystem;

/**
 * Printed by LibreOffice with one family of fonts alone, then with another one whose letters are a
 * seventh wider: no sheet runs over the side of its page.
 */
class PageFitTest {
  private static final Path FONTS = Path.of("/usr/share/fonts/truetype");
  private static final Pattern PAGE = Pattern.compile("/Type\\s*/Page\\b(?!s)");

  @TempDir private Path folder;

  private int pages(String family) throws IOException {
    Path fonts = folder.resolve(family + ".conf");
    Files.writeString(
        fonts,
        "<?xml version=\"1.0\"?><!DOCTYPE fontconfig SYSTEM \"fonts.dtd\"><fontconfig><dir>"
            + FONTS.resolve(family)
            + "</dir><cachedir>"
            + folder.resolve("cache-" + family)
            + "</cachedir></fontconfig>");
    Path book = folder.resolve(family + ".xlsx");
    Rendered.into(book, Sample.sheets(), UnitSystem.US, Sample.options());
    String profile = "-env:UserInstallation=" + folder.resolve("profile").toUri();
    List<String> print =
        List.of(
            "env",
            "FONTCONFIG_FILE=" + fonts,
            "soffice",
            profile,
            "--headless",
            "--convert-to",
            "pdf",
            "--outdir",
            folder.toString(),
            book.toString());
    assertEquals(0, Programs.run(folder, 4, TimeUnit.MINUTES, print));
    byte[] pdf = Files.readAllBytes(folder.resolve(family + ".pdf"));
    return (int) PAGE.matcher(new String(pdf, StandardCharsets.ISO_8859_1)).results().count();
  }

  @Test
  void noSheetRunsOverTheSideWhateverTheFont() throws IOException {
    assumeTrue(Programs.has("soffice"), "LibreOffice is not installed");
    for (String family : List.of("liberation", "dejavu")) {
      assumeTrue(Files.isDirectory(FONTS.resolve(family)), "no fonts " + family);
    }
    int narrow = pages("liberation");
    int wide = pages("dejavu");
    assertTrue(narrow >= Sample.sheets().size(), "pages: " + narrow);
    assertTrue(wide <= narrow + 1, "pages: " + narrow + " and " + wide);
  }
}
