package dev.filmward;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.cli.Main;
import dev.filmward.rule.SignalTest;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

/** What the program offers stands in its documentation. */
class DocumentationTest {
  private final String readme = read("README.md");
  private final String developers = read("DEVELOPERS.md");

  @Test
  void everyCommandAndOptionStandsInTheReadme() {
    Main.commands()
        .forEach(
            (name, command) -> {
              assertThat(readme).as("command").contains("| `" + name);
              assertOptions(name, command);
              command
                  .getSubcommands()
                  .forEach(
                      (part, below) -> {
                        assertThat(readme).contains("`" + name + " " + part);
                        assertOptions(name + " " + part, below);
                      });
            });
  }

  private void assertOptions(String name, CommandLine command) {
    for (OptionSpec option : command.getCommandSpec().options()) {
      assertOption(name, option);
    }
  }

  private void assertOption(String command, OptionSpec option) {
    if (!option.usageHelp() && !option.versionHelp()) {
      assertThat(readme).as("option of %s", command).contains(option.longestName());
    }
  }

  @Test
  void everyRouteStandsInTheDevelopersPage() {
    String routes = read("src/main/java/dev/filmward/web/WebServer.java");
    Matcher matcher = Pattern.compile("routes\\.\\w+\\(\"(/api/v1/[^\"]+)\"").matcher(routes);
    List<String> found = new ArrayList<>();
    while (matcher.find()) {
      found.add(matcher.group(1));
    }
    assertThat(found).hasSizeGreaterThan(10).allSatisfy(r -> assertThat(developers).contains(r));
  }

  @Test
  void everyTestOfPointsStandsInTheReadme() {
    for (SignalTest test : SignalTest.values()) {
      assertThat(readme).contains("`" + test.word() + "`");
    }
  }

  @Test
  void everyPageStandsInTheReadme() throws IOException {
    try (Stream<Path> pages = Files.list(Path.of("web"))) {
      assertThat(pages.filter(page -> page.toString().endsWith(".html")).count())
          .isEqualTo(
              Pattern.compile(
                      "(?m)^\\| (Board|Line|Layer|Limits|Calibration|Tests|Alarms|What changed|Signatures|Rolls|Causes|Handover|Figures|Report|Capability|Structures|Shifts|Intake|Screening|Film check|Study|Telling|People|Sign in|Help) \\|")
                  .matcher(readme)
                  .results()
                  .count());
    }
  }

  @Test
  void everyCommandNamedToDevelopersNamesATestThatIsThere() throws IOException {
    Matcher matcher = Pattern.compile("-D(?:it\\.)?test=(\\w+)").matcher(developers);
    while (matcher.find()) {
      String file = matcher.group(1) + ".java";
      try (Stream<Path> tests = Files.walk(Path.of("src/test/java"))) {
        assertThat(tests.map(path -> path.getFileName().toString())).contains(file);
      }
    }
  }

  @Test
  void theCautionsStandWhereAPersonCouldAct() {
    for (String place : List.of(readme, read("web/text/en/cautions.json"))) {
      assertThat(place.toLowerCase(Locale.ROOT))
          .contains("not a safety interlock")
          .contains("lock-out")
          .contains("responsible person");
    }
    assertThat(read("web/text/de/cautions.json"))
        .contains("keine Sicherheitsverriegelung")
        .contains("Freischaltverfahren")
        .contains("verantwortliche Person");
  }

  private static String read(String file) {
    try {
      return Files.readString(Path.of(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
