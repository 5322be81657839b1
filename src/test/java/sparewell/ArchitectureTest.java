package sparewell;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Holds the code to the tree in DEVELOPERS.md: who may import whom, and no circles. */
class ArchitectureTest {
  private static final JavaClasses CODE =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("sparewell");

  private static final String JAVA = "java..";

  /** Package → what else of the project and of the libraries it may import. */
  private static final Map<String, List<String>> MAY_IMPORT =
      new TreeMap<>(
          Map.ofEntries(
              Map.entry("units", List.of()),
              Map.entry("finding", List.of()),
              Map.entry("numerics", List.of("org.apache.commons.math3..")),
              Map.entry("table", List.of("units", "finding")),
              Map.entry("season", List.of("units", "finding")),
              Map.entry("check", List.of("season", "stock", "finding", "units")),
              Map.entry("stock", List.of("season", "units", "finding")),
              Map.entry(
                  "rates",
                  List.of(
                      "season",
                      "units",
                      "finding",
                      "numerics",
                      "stock",
                      "org.apache.commons.math3..")),
              Map.entry(
                  "spares", List.of("season", "units", "finding", "numerics", "stock", "rates")),
              Map.entry(
                  "stow",
                  List.of(
                      "season",
                      "units",
                      "finding",
                      "numerics",
                      "stock",
                      "org.apache.commons.math3..")),
              Map.entry(
                  "load",
                  List.of("season", "units", "finding", "numerics", "stock", "spares", "stow")),
              Map.entry(
                  "event",
                  List.of("season", "units", "finding", "numerics", "stock", "rates", "spares")),
              Map.entry(
                  "sheet",
                  List.of(
                      "table",
                      "season",
                      "finding",
                      "units",
                      "stock",
                      "rates",
                      "spares",
                      "stow",
                      "load",
                      "event",
                      "numerics")),
              Map.entry(
                  "ooxml",
                  List.of(
                      "finding", "org.apache.commons.compress..", "javax.xml..", "org.w3c.dom..")),
              Map.entry(
                  "workbook",
                  List.of(
                      "season",
                      "finding",
                      "units",
                      "ooxml",
                      "org.apache.poi..",
                      "org.apache.commons.text..",
                      "org.apache.commons.csv..",
                      "org.openxmlformats..",
                      "javax.xml..")),
              Map.entry(
                  "render",
                  List.of(
                      "table",
                      "units",
                      "finding",
                      "org.apache.poi..",
                      "org.apache.commons.csv..",
                      "org.apache.commons.compress..",
                      "org.openxmlformats..",
                      "org.apache.xmlbeans..",
                      "javax.xml..",
                      "org.w3c.dom..")),
              Map.entry(
                  "save",
                  List.of(
                      "ooxml",
                      "finding",
                      "org.apache.commons.compress..",
                      "javax.xml..",
                      "org.w3c.dom..",
                      "org.xml.sax.."))));

  @Test
  void theCodeWasSeen() {
    assertTrue(CODE.size() > 50, "only " + CODE.size() + " classes: was a package renamed?");
  }

  @TestFactory
  List<DynamicTest> everyPackageImportsOnlyWhatItMay() {
    List<DynamicTest> tests = new ArrayList<>();
    MAY_IMPORT.forEach(
        (name, others) -> {
          List<String> allowed = new ArrayList<>(List.of(JAVA, "sparewell." + name + ".."));
          for (String other : others) {
            allowed.add(other.endsWith("..") ? other : "sparewell." + other + "..");
          }
          tests.add(
              DynamicTest.dynamicTest(
                  name,
                  () ->
                      classes()
                          .that()
                          .resideInAPackage("sparewell." + name + "..")
                          .should()
                          .onlyDependOnClassesThat(
                              resideInAnyPackage(allowed.toArray(String[]::new))
                                  .or(
                                      com.tngtech.archunit.core.domain.JavaClass.Predicates
                                          .equivalentTo(Object[].class)))
                          .because("the tree in DEVELOPERS.md says so")
                          .check(CODE)));
        });
    return tests;
  }

  @Test
  void onlyTheCommandLineTalksToTheProcess() {
    noClasses()
        .that(not(resideInAPackage("sparewell.cli")).and(not(resideInAPackage("sparewell"))))
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
    slices().matching("sparewell.(*)..").should().beFreeOfCycles().check(CODE);
  }
}
