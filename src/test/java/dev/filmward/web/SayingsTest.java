package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.web.ComposedTexts.Composed;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What the server composes for people can be said in each language: every text of the sources that
 * {@code said/*.txt} of this package's resources name has its form, and every form is of a text
 * that there is.
 *
 * <p>A line of those files is {@code thrown PACKAGE} (what its exceptions say), {@code said
 * PACKAGE/CLASS} (every text of more than one word in a class), {@code word PACKAGE/CLASS TEXT} (a
 * single text of a class), {@code not TEXT} (not for people, or a piece of a text that has its
 * form) or starts with #.
 */
class SayingsTest {
  private static final Path SOURCES = Path.of("src/test/resources/dev/filmward/web/said");
  private static final Path RESINS =
      Path.of("src/main/resources/dev/filmward/gauge/echo/resins.csv");
  private static final Pattern QUOTED = Pattern.compile(ComposedTexts.HOLE, Pattern.LITERAL);
  private static final int MOST_RUNS = 3;
  private static final Set<Composed> COMPOSED = ComposedTexts.ofAllSources();

  @Test
  void theSourcesAreRead() {
    assertThat(COMPOSED)
        .hasSizeGreaterThan(2000)
        .contains(
            new Composed(
                "web/ErrorReplies", "what was sent cannot be kept: " + ComposedTexts.HOLE, false));
    assertThat(COMPOSED.stream().filter(Composed::isThrown)).hasSizeGreaterThan(300);
  }

  @ParameterizedTest
  @ValueSource(strings = "de")
  void everyTextForPeopleHasItsForm(String language) {
    Sayings sayings = new Sayings(language);
    Rules rules = rules();
    assertThat(
            COMPOSED.stream()
                .filter(rules::areOf)
                .filter(one -> samples(one.text()).noneMatch(sayings::knows))
                .map(one -> one.file() + ": " + one.text()))
        .as("texts without a form in web/text/" + language + "/said")
        .isEmpty();
    assertThat(rules.unused(COMPOSED)).as("lines of said/*.txt that fit nothing").isEmpty();
  }

  /**
   * With something in its holes: a word, or one in quotation marks; where it begins with the place
   * of a fault, without it.
   */
  private static Stream<String> samples(String text) {
    String placeless = text.replaceFirst("^\\{\\}(?=\\p{L})", "");
    String quoted = QUOTED.matcher(placeless).replaceFirst("\"\u2022\"");
    return Stream.of(text, placeless, quoted).map(one -> one.replace(ComposedTexts.HOLE, "\u2022"));
  }

  /** Of texts that are joined when they are said, each stretch between two stops is looked for. */
  @ParameterizedTest
  @ValueSource(strings = "de")
  void everyFormIsOfTextsThatThereAre(String language) throws IOException {
    String all = everythingSaid();
    List<String> strange = new ArrayList<>();
    for (String form : new Sayings(language).texts().keySet()) {
      for (String piece : form.split("[{]\\w*[}]|[:;,.()]( |$)|[()]")) {
        if (runs(piece.strip(), all) > MOST_RUNS) {
          strange.add(form + "  [" + piece.strip() + "]");
        }
      }
    }
    assertThat(strange).as("forms that no source says").isEmpty();
  }

  /** Of sources, what is known of resins, and what Java calls the days of the week. */
  private static String everythingSaid() throws IOException {
    Stream<String> composed = COMPOSED.stream().map(Composed::text).distinct();
    Stream<String> days =
        Stream.of(DayOfWeek.values())
            .map(day -> day.getDisplayName(TextStyle.FULL, Locale.ENGLISH));
    return Stream.of(composed, Files.lines(RESINS), days)
        .flatMap(Function.identity())
        .collect(Collectors.joining("\n"));
  }

  /** Of how many stretches that sources have a piece is made, the longest first. */
  private static int runs(String piece, String all) {
    List<String> words = List.of(piece.split(" "));
    int runs = 0;
    for (int from = 0; from < words.size(); runs++) {
      int to = words.size();
      while (to > from && !all.contains(String.join(" ", words.subList(from, to)))) {
        to--;
      }
      if (to == from) {
        return Integer.MAX_VALUE;
      }
      from = to;
    }
    return runs;
  }

  @ParameterizedTest
  @ValueSource(strings = "de")
  void everyFormKeepsItsPlacesAndNoneIsTwice(String language) {
    Set<String> seen = new HashSet<>();
    for (String room : Sayings.rooms(language)) {
      Sayings.of(language, room)
          .forEach(
              (form, other) -> {
                assertThat(places(other)).as(room + ": " + form).isEqualTo(places(form));
                assertThat(other).as(room + ": " + form).isNotBlank();
                assertThat(form.replaceAll("[{]\\w*[}]", "")).as("%s", form).containsPattern("\\w");
                assertThat(seen.add(form)).as("%s is said once, in %s too", form, room).isTrue();
                assertThat(form).isEqualTo(ComposedTexts.withMicrometres(form));
              });
    }
  }

  private static Set<String> places(String text) {
    return new TreeSet<>(Sayings.PLACE.matcher(text).results().map(MatchResult::group).toList());
  }

  private static Rules rules() {
    List<String> lines = new ArrayList<>();
    try (Stream<Path> files = Files.list(SOURCES)) {
      for (Path file : files.sorted().toList()) {
        lines.addAll(Files.readAllLines(file));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    lines.removeIf(line -> line.isBlank() || line.startsWith("#"));
    return new Rules(lines);
  }

  private record Rules(List<String> lines) {
    boolean areOf(Composed one) {
      return !lines.contains("not " + one.text())
          && lines.stream().anyMatch(line -> fits(line, one));
    }

    private static boolean fits(String line, Composed one) {
      boolean isSentence = one.text().matches("(?s).*\\p{L}\\p{L}.*") && one.text().contains(" ");
      return line.equals("word " + one.file() + " " + one.text())
          || (isSentence
              && (line.equals("said " + one.file())
                  || (one.isThrown() && line.equals("thrown " + one.room()))));
    }

    List<String> unused(Set<Composed> composed) {
      return lines.stream()
          .filter(
              line ->
                  composed.stream()
                      .noneMatch(one -> line.equals("not " + one.text()) || fits(line, one)))
          .toList();
    }
  }
}
