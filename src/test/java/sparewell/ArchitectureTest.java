package sparewell;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.equivalentTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Holds the code to the table of packages in DEVELOPERS.md, which is read here, and no circles. */
class ArchitectureTest {
  private static final JavaClasses CODE =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("sparewell");

  private static final Map<String, List<String>> LIBRARIES =
      Map.of(
          "Commons Compress", List.of("org.apache.commons.compress.."),
          "Commons CSV", List.of("org.apache.commons.csv.."),
          "Commons Math", List.of("org.apache.commons.math3.."),
          "Commons Text", List.of("org.apache.commons.text.."),
          "picocli", List.of("picocli.."),
          "POI", List.of("org.apache.poi..", "org.openxmlformats.."),
          "XML", List.of("javax.xml..", "org.w3c.dom..", "org.xml.sax.."));

  /** Package → what else of the project and of the libraries it may import, as the table has it. */
  private static final Map<String, List<String>> MAY_IMPORT = table();

  private static Map<String, List<String>> table() {
    try (Stream<String> lines = Files.lines(Path.of("DEVELOPERS.md"))) {
      return lines
          .dropWhile(line -> !line.startsWith("| package |"))
          .skip(2)
          .takeWhile(line -> line.startsWith("|"))
          .map(line -> line.split("\\|"))
          .collect(
              Collectors.toMap(
                  cells -> cells[1].strip().replace("`", ""),
                  cells -> List.of(cells[3].strip().split(", ")),
                  (one, other) -> one,
                  TreeMap::new));
    } catch (IOException gone) {
      throw new UncheckedIOException(gone);
    }
  }

  @Test
  void theTableNamesEveryPackage() {
    TreeSet<String> packages = new TreeSet<>();
    CODE.forEach(type -> packages.add(type.getPackageName().replaceFirst("^sparewell\\.", "")));
    assertEquals(packages, MAY_IMPORT.keySet());
    assertTrue(CODE.size() > 300, "only " + CODE.size() + " classes");
  }

  @TestFactory
  Stream<DynamicTest> everyPackageImportsOnlyWhatItMay() {
    return MAY_IMPORT.keySet().stream()
        .map(name -> DynamicTest.dynamicTest(name, () -> hold(name)));
  }

  private static void hold(String name) {
    String[] allowed =
        Stream.concat(Stream.of(name), MAY_IMPORT.get(name).stream())
            .flatMap(ArchitectureTest::patterns)
            .toArray(String[]::new);
    classes()
        .that()
        .resideInAPackage(full(name))
        .should()
        .onlyDependOnClassesThat(resideInAnyPackage(allowed).or(equivalentTo(Object[].class)))
        .because("the table in DEVELOPERS.md says so")
        .check(CODE);
  }

  private static Stream<String> patterns(String entry) {
    Stream<String> entries =
        switch (entry) {
          case "nothing" -> Stream.of();
          case "all but cli" ->
              MAY_IMPORT.keySet().stream()
                  .filter(p -> !p.equals("cli"))
                  .map(ArchitectureTest::full);
          default -> LIBRARIES.getOrDefault(entry, List.of(full(entry))).stream();
        };
    return Stream.concat(Stream.of("java.."), entries);
  }

  private static String full(String name) {
    return name.equals("sparewell") ? name : "sparewell." + name;
  }

  @Test
  void onlyTheCommandLineTalksToTheProcess() {
    noClasses()
        .that(JavaClass.Predicates.resideOutsideOfPackages("sparewell", "sparewell.cli"))
        .should()
        .accessField(System.class, "out")
        .orShould()
        .accessField(System.class, "err")
        .orShould()
        .callMethod(System.class, "exit", int.class)
        .orShould()
        .callMethod(LocalDate.class, "now")
        .orShould()
        .callMethod(LocalDateTime.class, "now")
        .check(CODE);
  }

  @Test
  void noCircles() {
    slices().matching("sparewell.(**)").should().beFreeOfCycles().check(CODE);
  }
}
