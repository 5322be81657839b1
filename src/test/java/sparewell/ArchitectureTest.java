package sparewell;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.equivalentTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaAccess;
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
import java.util.Set;
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

  /** What gives the words of a finding, a step, a refusal or a row that was left out. */
  private static final Set<String> WORDS =
      Set.of(
          "finding.Finding.message",
          "finding.Finding.done",
          "finding.Finding.details",
          "ooxml.WorkbookRefused.getMessage",
          "ooxml.WorkbookRefused.problem",
          "ooxml.WorkbookRefused.words",
          "workbook.read.UnusableWorkbook.faults",
          "workbook.importing.Rejected.reason",
          "sheet.Folded.message",
          "sheet.Step.text",
          "sheet.Step$Detail.text",
          "table.Block$Line.text");

  private static final Set<String> TAKING_APART =
      Set.of(
          "startsWith",
          "endsWith",
          "contains",
          "indexOf",
          "split",
          "matches",
          "replace",
          "replaceAll",
          "replaceFirst");

  /** A class that is given such words shows them: it asks nothing of them and takes none apart. */
  @Test
  void wordsAreForShowing() {
    Map<String, String> given = new TreeMap<>();
    Map<String, String> takenApart = new TreeMap<>();
    for (JavaClass type : CODE) {
      String name = type.getFullName().replaceFirst("\\$.*", "");
      for (JavaAccess<?> access : type.getAccessesFromSelf()) {
        String owner = access.getTargetOwner().getFullName();
        String target = owner.replaceFirst("^sparewell\\.", "") + "." + access.getName();
        if (WORDS.contains(target)) {
          given.putIfAbsent(name, target);
        } else if (owner.equals("java.util.regex.Pattern") && access.getName().equals("matcher")
            || owner.equals("java.lang.String") && TAKING_APART.contains(access.getName())) {
          takenApart.put(name, access.getDescription());
        }
      }
    }
    assertTrue(given.size() > 10, given.toString());
    takenApart.keySet().retainAll(given.keySet());
    takenApart.remove("sparewell.workbook.importing.RejectedFile"); // makes CSV text of them
    assertEquals(Map.of(), takenApart);
  }

  /** The steps to take are made in one place, and each command that needs them asks once. */
  @Test
  void whatToDoIsWorkedOutOnceARun() {
    assertEquals(List.of("sparewell.sheet.ReportSheets.of"), users("sparewell.sheet.ToDo"));
    assertEquals(
        List.of("sparewell.run.BookRun.check", "sparewell.run.BookRun.written"),
        CODE.get("sparewell.sheet.ReportSheets").getMethodCallsToSelf().stream()
            .filter(call -> call.getTarget().getRawReturnType().getSimpleName().equals("Report"))
            .map(call -> call.getOriginOwner().getFullName() + "." + call.getOrigin().getName())
            .sorted()
            .toList());
  }

  /** Where code outside a class calls it, once a call. */
  private static List<String> users(String type) {
    return CODE.get(type).getCodeUnitCallsToSelf().stream()
        .filter(call -> !call.getOriginOwner().getFullName().equals(type))
        .map(call -> call.getOriginOwner().getFullName() + "." + call.getOrigin().getName())
        .sorted()
        .toList();
  }
}
