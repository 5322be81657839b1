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
import java.util.ArrayList;
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
          "Aalto", List.of("com.fasterxml.aalto..", "org.codehaus.stax2.."),
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

  /** Calls that give the words of a finding, a step, a refusal or a row that was left out. */
  private static final Set<String> WORDS =
      Set.of(
          "sparewell.finding.Finding.message",
          "sparewell.finding.Finding.done",
          "sparewell.finding.Finding.details",
          "sparewell.ooxml.WorkbookRefused.getMessage",
          "sparewell.ooxml.WorkbookRefused.problem",
          "sparewell.ooxml.WorkbookRefused.words",
          "sparewell.workbook.read.UnusableInput.faults",
          "sparewell.workbook.importing.SheetPlan$Rejected.reason",
          "sparewell.sheet.Folded.message",
          "sparewell.sheet.Step.text",
          "sparewell.sheet.Step$Detail.text",
          "sparewell.table.Block$Line.text");

  private static final Set<String> TAKING_APART =
      Set.of(
          "java.util.regex.Pattern.matcher",
          "java.lang.String.startsWith",
          "java.lang.String.endsWith",
          "java.lang.String.contains",
          "java.lang.String.indexOf",
          "java.lang.String.split",
          "java.lang.String.matches",
          "java.lang.String.replace",
          "java.lang.String.replaceAll",
          "java.lang.String.replaceFirst");

  private static final Set<String> FILE_CHANGING =
      Set.of(
          "java.io.File.delete",
          "java.io.File.renameTo",
          "java.io.FileOutputStream.<init>",
          "java.io.FileWriter.<init>",
          "java.io.RandomAccessFile.<init>",
          "java.nio.file.Files.copy",
          "java.nio.file.Files.createTempFile",
          "java.nio.file.Files.delete",
          "java.nio.file.Files.deleteIfExists",
          "java.nio.file.Files.move",
          "java.nio.file.Files.newBufferedWriter",
          "java.nio.file.Files.newOutputStream",
          "java.nio.file.Files.write",
          "java.nio.file.Files.writeString");

  /** A class that is given such words shows them: it asks nothing of them and takes none apart. */
  @Test
  void wordsAreForShowing() {
    Set<String> takenApart = callers(TAKING_APART);
    takenApart.retainAll(callers(WORDS));
    takenApart.remove("sparewell.workbook.importing.RejectedFile"); // makes CSV text of them
    assertEquals(Set.of(), takenApart);
    assertTrue(callers(WORDS).size() > 10);
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

  /** Calls of a class from outside it, one entry a call. */
  private static List<String> users(String type) {
    return CODE.get(type).getCodeUnitCallsToSelf().stream()
        .filter(call -> !call.getOriginOwner().getFullName().equals(type))
        .map(call -> call.getOriginOwner().getFullName() + "." + call.getOrigin().getName())
        .sorted()
        .toList();
  }

  /** DEVELOPERS.md tells what bounds each. */
  @Test
  void onlyTheseRemoveOrReplaceFiles() {
    assertEquals(
        Set.of(
            "sparewell.experience.file.LogId",
            "sparewell.run.ClubReport",
            "sparewell.run.NewBook",
            "sparewell.run.Rehearsal",
            "sparewell.run.ReportFolder",
            "sparewell.run.Scratch",
            "sparewell.run.ShareRun",
            "sparewell.run.WrittenFiles",
            "sparewell.save.file.Backups",
            "sparewell.save.file.Replacement",
            "sparewell.save.file.RunLock",
            "sparewell.workbook.importing.RejectedFile"),
        callers(FILE_CHANGING));
  }

  /** The classes that call one of these, nested ones as part of their class. */
  private static Set<String> callers(Set<String> targets) {
    Set<String> callers = new TreeSet<>();
    for (JavaClass type : CODE) {
      for (JavaAccess<?> access : type.getAccessesFromSelf()) {
        if (targets.contains(access.getTargetOwner().getFullName() + "." + access.getName())) {
          callers.add(type.getFullName().replaceFirst("\\$.*", ""));
        }
      }
    }
    return callers;
  }

  /** One place decides which numbers are read as percent, whoever gives a chance. */
  @Test
  void whatIsReadAsPercentIsSaidOnce() throws IOException {
    try (Stream<Path> sources = Files.walk(Path.of("src/main/java"))) {
      List<String> deciding = new ArrayList<>();
      for (Path source : sources.filter(Files::isRegularFile).toList()) {
        String text = Files.readString(source);
        if (text.contains(" 99.9")
            && text.lines()
                .anyMatch(line -> line.contains(" 99.9") && !line.matches(".*[*\"].*"))) {
          deciding.add(source.getFileName().toString());
        }
      }
      assertEquals(List.of("TypedChance.java"), deciding);
    }
  }
}
