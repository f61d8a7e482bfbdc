package dev.filmward.report.paper;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Role;
import dev.filmward.gauge.screen.Misread;
import dev.filmward.gauge.screen.ScreeningState;
import dev.filmward.report.FilmWeek;
import dev.filmward.report.IndexWeek;
import dev.filmward.report.Verdict;
import dev.filmward.rule.SignalTest;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The catalogues of the paper: the same in both languages, whole, and nothing that nobody says. */
class PaperTextsTest {
  private static final Path CATALOGUES = Path.of("src/main/resources/dev/filmward/report/paper");
  private static final Path SOURCES = Path.of("src/main/java/dev/filmward/report/paper");
  private static final Pattern PLACE = Pattern.compile("\\{(\\w+)\\}");

  @Test
  void bothLanguagesHaveTheSameKeysAndPlaces() throws IOException {
    Properties english = catalogue("en");
    Properties german = catalogue("de");
    assertThat(german.stringPropertyNames()).isEqualTo(english.stringPropertyNames());
    for (String key : english.stringPropertyNames()) {
      assertThat(places(german.getProperty(key)))
          .as(key)
          .isEqualTo(places(english.getProperty(key)));
      assertThat(english.getProperty(key)).as(key).isNotBlank();
      assertThat(german.getProperty(key)).as(key).isNotBlank();
    }
    assertThat(english).hasSizeGreaterThan(300);
  }

  /** Said in whole, or begun by a string that ends in a point and goes on with a code. */
  @Test
  void everyKeyIsSaid() throws IOException {
    String source = source();
    Set<String> strings =
        Pattern.compile("\"([\\w.-]+)\"")
            .matcher(source)
            .results()
            .map(found -> found.group(1))
            .collect(Collectors.toSet());
    List<String> groups = new ArrayList<>();
    for (MatchResult call :
        Pattern.compile(
                "(?:say|count|knows)\\(\\s*\"([\\w.-]+\\.)\"\\s*\\+|called\\(\\s*\"(\\w+)\"|key = \"([\\w.-]+\\.)\"\\s*\\+")
            .matcher(source)
            .results()
            .toList()) {
      groups.add(
          call.group(1) != null
              ? call.group(1)
              : call.group(2) != null ? call.group(2) + "." : call.group(3));
    }
    assertThat(catalogue("en").stringPropertyNames())
        .allSatisfy(
            key -> {
              String whole = key.replaceAll("\\.(one|other)$", "");
              String code = whole.substring(whole.lastIndexOf('.') + 1);
              boolean isGroup = groups.stream().anyMatch(whole::startsWith);
              boolean isKnownCode = strings.contains(code) || codes().contains(code);
              assertThat(strings.contains(whole) || (isGroup && isKnownCode)).as(key).isTrue();
            });
  }

  @Test
  void everyCodeOfAReportHasAName() throws IOException {
    Properties english = catalogue("en");
    assertThat(names("verdict.", Verdict.values())).allMatch(english::containsKey);
    assertThat(names("why.", IndexWeek.Why.values())).allMatch(english::containsKey);
    assertThat(names("kind.", IndexWeek.Kind.values())).allMatch(english::containsKey);
    assertThat(names("standing.", IndexWeek.Standing.values())).allMatch(english::containsKey);
    assertThat(names("indexMethod.", IndexWeek.Method.values())).allMatch(english::containsKey);
    assertThat(names("role.", Role.values())).allMatch(english::containsKey);
    assertThat(names("misread.", Misread.values())).allMatch(english::containsKey);
    assertThat(names("screeningState.", ScreeningState.values())).allMatch(english::containsKey);
    assertThat(names("act.", FilmWeek.Act.Kind.values()))
        .allMatch(key -> english.containsKey(key) || english.containsKey(key + ".other"));
    for (SignalTest test : SignalTest.values()) {
      assertThat(english).containsKey("test." + test.word());
    }
  }

  /** German decimal comma; grouping from five digits on; a true minus sign; no negative zero. */
  @Test
  void numbersAreWrittenAsTheLanguageWritesThem() {
    Texts english = new Texts(Language.EN);
    Texts german = new Texts(Language.DE);
    assertThat(english.number(1.336, 2)).isEqualTo("1.34");
    assertThat(german.number(1.336, 2)).isEqualTo("1,34");
    assertThat(german.number(12_345.6, 1)).isEqualTo("12\u202f345,6");
    assertThat(english.number(412.5, 0)).isEqualTo("413");
    assertThat(english.number(1234, 0)).isEqualTo("1234");
    assertThat(english.number(-0.5, 1)).isEqualTo("\u22120.5");
    assertThat(english.number(-0.001, 2)).isEqualTo("0.00");
  }

  private static Set<String> names(String group, Enum<?>[] values) {
    return Stream.of(values)
        .map(value -> group + value.name().toLowerCase(Locale.ROOT).replace('_', '-'))
        .collect(Collectors.toSet());
  }

  /** Codes that come from elsewhere. */
  private static Set<String> codes() {
    Set<String> codes = new TreeSet<>();
    for (Enum<?>[] values :
        List.of(
            Verdict.values(),
            IndexWeek.Why.values(),
            IndexWeek.Kind.values(),
            IndexWeek.Standing.values(),
            IndexWeek.Method.values(),
            FilmWeek.Act.Kind.values(),
            Role.values(),
            Misread.values(),
            ScreeningState.values(),
            dev.filmward.chart.LimitsState.values(),
            dev.filmward.report.WeeklyReport.Edition.values())) {
      codes.addAll(names("", values));
    }
    Stream.of(SignalTest.values()).map(SignalTest::word).forEach(codes::add);
    codes.addAll(Set.of("range", "ewma", "normal", "not-normal", "not-judged", "0", "1"));
    Stream.of(Characteristic.Kind.values()).map(Characteristic.Kind::word).forEach(codes::add);
    codes.addAll(Set.of("ppk", "cpk", "mean", "readings", "verdict", "received", "leftOut"));
    codes.addAll(Set.of("alarms", "unexplained", "sigmaWithin", "sigmaOverall", "kind"));
    codes.addAll(Set.of("earlierReadings", "earlierPpk"));
    codes.addAll(Set.of("data", "expected", "missing", "calibrations", "scalings", "limits"));
    codes.addAll(Set.of("observedPpm", "signalled"));
    return codes;
  }

  private static Set<String> places(String sentence) {
    return PLACE
        .matcher(sentence)
        .results()
        .map(found -> found.group(1))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static Properties catalogue(String language) throws IOException {
    Properties catalogue = new Properties();
    try (Reader reader = Files.newBufferedReader(CATALOGUES.resolve(language + ".properties"))) {
      catalogue.load(reader);
    }
    return catalogue;
  }

  private static String source() throws IOException {
    StringBuilder source = new StringBuilder();
    try (Stream<Path> files = Files.list(SOURCES)) {
      for (Path file : files.filter(each -> each.toString().endsWith(".java")).sorted().toList()) {
        source.append(Files.readString(file));
      }
    }
    return source.toString();
  }
}
