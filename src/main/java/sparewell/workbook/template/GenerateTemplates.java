package sparewell.workbook.template;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import sparewell.units.UnitSystem;

/** Writes the workbooks kept in {@code workbook-templates}; run with {@code mvn -Ptemplates}. */
public final class GenerateTemplates {
  /** A workbook kept in the folder. */
  public record Kept(String fileName, UnitSystem units, TemplateKind kind) {}

  /** All of them. */
  public static final List<Kept> ALL =
      List.of(
          new Kept("blank-us.xlsx", UnitSystem.US, TemplateKind.BLANK),
          new Kept("blank-metric.xlsx", UnitSystem.METRIC, TemplateKind.BLANK),
          new Kept("demo.xlsx", UnitSystem.US, TemplateKind.DEMO),
          new Kept("demo-metric.xlsx", UnitSystem.METRIC, TemplateKind.DEMO),
          new Kept("messy-demo.xlsx", UnitSystem.US, TemplateKind.MESSY));

  private GenerateTemplates() {}

  /** Writes all into the folder named by the first argument, over what is there. */
  public static void main(String[] arguments) throws IOException {
    Path folder = Path.of(arguments.length == 0 ? "workbook-templates" : arguments[0]);
    Files.createDirectories(folder);
    for (Kept kept : ALL) {
      try (OutputStream out = Files.newOutputStream(folder.resolve(kept.fileName()))) {
        TemplateWriter.write(out, kept.units(), kept.kind());
      }
    }
  }
}
