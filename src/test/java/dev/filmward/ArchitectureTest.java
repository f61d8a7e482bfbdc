package dev.filmward;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaPackage;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Holds which room may import which, and which rooms may touch files, clocks and the network. */
class ArchitectureTest {
  private static final String ROOT = "dev.filmward";
  private static final Set<String> OURS =
      Set.of(
          "film",
          "stats",
          "intake",
          "simulate",
          "subgroup",
          "gauge",
          "chart",
          "rule",
          "drift",
          "variation",
          "capability",
          "composition",
          "diagnosis",
          "alarm",
          "people",
          "telling",
          "shift",
          "store",
          "access",
          "pipeline",
          "tables",
          "report",
          "web",
          "cli");

  private static final Map<String, Set<String>> MAY_IMPORT =
      Map.ofEntries(
          Map.entry("film", Set.of()),
          Map.entry("stats", Set.of()),
          Map.entry("intake", Set.of("film")),
          Map.entry("simulate", Set.of("film")),
          Map.entry("subgroup", Set.of("film", "stats")),
          Map.entry("chart", Set.of("film", "stats", "subgroup")),
          Map.entry("gauge", Set.of("film", "stats", "subgroup")),
          Map.entry("rule", Set.of("stats", "chart")),
          Map.entry("drift", Set.of("stats", "chart")),
          Map.entry("variation", Set.of("film", "stats", "subgroup")),
          Map.entry("capability", Set.of("film", "stats", "subgroup")),
          Map.entry("composition", Set.of("film", "stats", "subgroup", "chart")),
          Map.entry(
              "diagnosis",
              Set.of(
                  "film",
                  "stats",
                  "subgroup",
                  "gauge",
                  "chart",
                  "rule",
                  "drift",
                  "capability",
                  "composition")),
          Map.entry("alarm", Set.of("film", "chart", "rule", "diagnosis")),
          Map.entry("people", Set.of()),
          Map.entry("shift", Set.of()),
          Map.entry("telling", Set.of("film", "alarm", "people")),
          Map.entry(
              "store",
              Set.of(
                  "film",
                  "subgroup",
                  "gauge",
                  "chart",
                  "rule",
                  "diagnosis",
                  "alarm",
                  "people",
                  "telling",
                  "shift")),
          Map.entry("access", Set.of("people", "store")),
          Map.entry(
              "pipeline",
              except("simulate", "access", "tables", "report", "web", "cli", "pipeline")),
          Map.entry(
              "tables", except("simulate", "store", "access", "report", "web", "cli", "tables")),
          Map.entry("report", except("simulate", "access", "tables", "web", "cli", "report")),
          Map.entry("web", except("simulate", "cli", "web")),
          Map.entry("cli", except("cli")));

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages(ROOT);

  private static Set<String> except(String... rooms) {
    Set<String> rest = new TreeSet<>(OURS);
    rest.removeAll(Set.of(rooms));
    return rest;
  }

  @TestFactory
  java.util.List<DynamicTest> everyRoomImportsOnlyWhatTheTableAllows() {
    return MAY_IMPORT.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .map(
            entry ->
                DynamicTest.dynamicTest(
                    entry.getKey(), () -> check(entry.getKey(), entry.getValue())))
        .toList();
  }

  private static void check(String room, Set<String> allowed) {
    Set<String> forbidden = new TreeSet<>(OURS);
    forbidden.removeAll(allowed);
    forbidden.remove(room);
    if (forbidden.isEmpty()) {
      return;
    }
    noClasses()
        .that()
        .resideInAPackage(ROOT + "." + room + "..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(
            forbidden.stream().map(other -> ROOT + "." + other + "..").toArray(String[]::new))
        .check(CLASSES);
  }

  @Test
  void theTableNamesEveryRoomThereIs() {
    Set<String> rooms =
        CLASSES.getPackage(ROOT).getSubpackages().stream()
            .map(JavaPackage::getRelativeName)
            .collect(Collectors.toSet());
    assertThat(rooms).isEqualTo(OURS).isEqualTo(MAY_IMPORT.keySet());
  }

  @Test
  void nothingLeftOfTheStoreTouchesFilesClocksThreadsOrTheNetwork() {
    noClasses()
        .that()
        .resideInAnyPackage(
            packages(
                "film",
                "stats",
                "intake",
                "simulate",
                "subgroup",
                "gauge",
                "chart",
                "rule",
                "drift",
                "variation",
                "capability",
                "composition",
                "diagnosis",
                "alarm",
                "shift"))
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(
            "java.nio.file..",
            "java.net..",
            "java.sql..",
            "java.util.concurrent",
            "java.util.concurrent.locks")
        .orShould()
        .dependOnClassesThat()
        .haveFullyQualifiedName("java.io.File")
        .orShould()
        .dependOnClassesThat()
        .haveFullyQualifiedName("java.lang.Thread")
        .orShould()
        .callMethod(java.time.Instant.class, "now")
        .check(CLASSES);
  }

  @Test
  void eachLibraryStaysInItsRoom() {
    onlyIn("org.apache.commons.math3..", "stats");
    onlyIn("tech.tablesaw..", "tables");
    onlyIn("io.javalin..", "web");
    onlyIn("picocli..", "cli");
    onlyIn("com.password4j..", "access");
    onlyIn("org.jdbi..", "store");
    onlyIn("jakarta.mail..", "telling");
    onlyIn("java.net.http..", "telling");
    onlyIn("io.micrometer..", "web");
    onlyIn("com.openhtmltopdf..", "report.paper");
    onlyIn("org.apache.pdfbox..", "report.paper");
    onlyIn("org.apache.fontbox..", "report.paper");
    onlyIn("org.apache.batik..", "report.paper");
    onlyIn("org.dhatim.fastexcel..", "report.paper");
  }

  private static void onlyIn(String library, String room) {
    noClasses()
        .that()
        .resideOutsideOfPackage(ROOT + "." + room + "..")
        .should()
        .dependOnClassesThat()
        .resideInAPackage(library)
        .check(CLASSES);
  }

  private static String[] packages(String... rooms) {
    return Set.of(rooms).stream().map(room -> ROOT + "." + room + "..").toArray(String[]::new);
  }
}
