package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * What pages say stands in catalogues, the same keys and places in each language, and nowhere else.
 */
class TextsTest {
  private static final Path TEXTS = Path.of("web/text");
  private static final Path MODULES = Path.of("web/app");
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Pattern PLACE = Pattern.compile("\\{(\\w+)\\}");
  private static final Pattern ROOM = Pattern.compile("const (\\w+) = await room\\('([\\w-]+)'\\)");

  @Test
  void everyLanguageHasTheSameRoomsKeysAndPlaces() throws IOException {
    TreeMap<String, Set<String>> english = places("en");
    assertThat(english).hasSizeGreaterThan(40);
    try (Stream<Path> languages = Files.list(TEXTS)) {
      for (Path language : languages.toList()) {
        String name = language.getFileName().toString();
        TreeMap<String, Set<String>> other = places(name);
        assertThat(other.keySet()).as("keys in " + name).isEqualTo(english.keySet());
        assertThat(other).as("places in " + name).isEqualTo(english);
      }
    }
  }

  @Test
  void noTextIsEmptyAndEveryPluralHasItsOther() throws IOException {
    for (String language : List.of("en", "de")) {
      for (Path room : rooms(language)) {
        JSON.readTree(room.toFile())
            .properties()
            .forEach(
                entry -> {
                  JsonNode text = entry.getValue();
                  String where = room + " " + entry.getKey();
                  assertThat(text.isObject() ? text.path("other").asText() : text.asText())
                      .as(where)
                      .isNotBlank();
                });
      }
    }
  }

  @Test
  void everyKeyThatAModuleAsksForIsThereAndEveryKeyIsAskedFor() throws IOException {
    Set<String> keys = places("en").keySet();
    Set<String> asked = new HashSet<>();
    List<String> starts = new ArrayList<>();
    List<String> missing = new ArrayList<>();
    for (Path module : modules()) {
      String source = Files.readString(module);
      for (MatchResult room : ROOM.matcher(source).results().toList()) {
        String speaker = "(?<![\\w.])" + room.group(1) + "(?:\\.nodes|\\.maybe)?\\(";
        for (MatchResult call :
            Pattern.compile(speaker + "([^()]*(?:\\([^()]*\\)[^()]*)*)\\)?")
                .matcher(source)
                .results()
                .toList()) {
          for (MatchResult key :
              Pattern.compile("'([^']+)'|`([^`]*)`")
                  .matcher(keyOf(call.group(1)))
                  .results()
                  .toList()) {
            if (key.group(1) != null && keys.contains(room.group(2) + "." + key.group(1))) {
              asked.add(room.group(2) + "." + key.group(1));
            } else if (key.group(2) != null) {
              starts.add(room.group(2) + "." + key.group(2).replaceAll("\\$\\{.*", ""));
            }
          }
          String first = keyOf(call.group(1)).strip();
          if (first.matches("'[^']+'")
              && !keys.contains(room.group(2) + "." + first.replace("'", ""))) {
            missing.add(module + " asks for " + room.group(2) + "." + first);
          }
        }
        Pattern.compile(speaker + "[^`'\"()]*`([^`$]*)\\$\\{")
            .matcher(source)
            .results()
            .forEach(call -> starts.add(room.group(2) + "." + call.group(1)));
        keys.stream()
            .filter(key -> key.startsWith(room.group(2) + "."))
            .filter(key -> source.contains("'" + key.substring(room.group(2).length() + 1) + "'"))
            .forEach(asked::add);
      }
    }
    assertThat(missing).isEmpty();
    assertThat(
            keys.stream()
                .filter(key -> !asked.contains(key))
                .filter(key -> starts.stream().noneMatch(key::startsWith)))
        .as("keys that nobody asks for")
        .isEmpty();
  }

  /** The first argument of a call. */
  private static String keyOf(String arguments) {
    int depth = 0;
    for (int i = 0; i < arguments.length(); i++) {
      char c = arguments.charAt(i);
      depth += c == '(' || c == '{' || c == '[' ? 1 : c == ')' || c == '}' || c == ']' ? -1 : 0;
      if (c == ',' && depth == 0) {
        return arguments.substring(0, i);
      }
    }
    return arguments;
  }

  private static TreeMap<String, Set<String>> places(String language) throws IOException {
    TreeMap<String, Set<String>> found = new TreeMap<>();
    for (Path room : rooms(language)) {
      String name = room.getFileName().toString().replace(".json", "");
      JSON.readTree(room.toFile())
          .properties()
          .forEach(
              entry -> {
                Set<String> places = new TreeSet<>();
                PLACE
                    .matcher(entry.getValue().toString())
                    .results()
                    .forEach(place -> places.add(place.group(1)));
                found.put(name + "." + entry.getKey(), places);
              });
    }
    return found;
  }

  private static List<Path> rooms(String language) throws IOException {
    try (Stream<Path> files = Files.list(TEXTS.resolve(language))) {
      return files.filter(Files::isRegularFile).sorted().toList();
    }
  }

  private static List<Path> modules() throws IOException {
    try (Stream<Path> files = Files.list(MODULES)) {
      return files
          .filter(file -> file.toString().endsWith(".js") && !file.endsWith("text.js"))
          .sorted()
          .toList();
    }
  }
}
