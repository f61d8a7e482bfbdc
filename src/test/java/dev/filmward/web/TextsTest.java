package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * What pages say stands in catalogues, the same keys and places in each language; every key that a
 * module asks for is there, also one that it chooses or puts together, and every key is asked for.
 */
class TextsTest {
  private static final Path TEXTS = Path.of("web/text");
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Pattern PLACE = Pattern.compile("\\{(\\w+)\\}");

  @Test
  void everyLanguageHasTheSameRoomsKeysAndPlaces() throws IOException {
    TreeMap<String, Set<String>> english = places("en");
    assertThat(english).hasSizeGreaterThan(40);
    try (Stream<Path> languages = Files.list(TEXTS)) {
      for (Path language : languages.toList()) {
        String name = language.getFileName().toString();
        TreeMap<String, Set<String>> other = places(name);
        assertThat(without(english, other)).as("keys that are not in " + name).isEmpty();
        assertThat(without(other, english)).as("keys that are in " + name + " only").isEmpty();
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
  void everyKeyThatAModuleAsksForIsThere() throws IOException {
    Set<String> keys = places("en").keySet();
    List<String> missing = new ArrayList<>();
    for (AskedKeys asked : asked()) {
      assertThat(asked.isOpen())
          .as(asked.place() + " asks for a key of which the module says nothing")
          .isFalse();
      asked
          .missing(keysOf(asked.room(), keys))
          .forEach(key -> missing.add(asked.place() + " " + asked.room() + "." + key));
    }
    assertThat(missing).as("keys that are missing in web/text/en").isEmpty();
  }

  @Test
  void everyKeyIsAskedFor() throws IOException {
    List<AskedKeys> asked = asked();
    Set<String> unused = new TreeSet<>();
    for (Path room : rooms("en")) {
      String name = name(room);
      Set<String> keys = keysOf(name, places("en").keySet());
      keys.removeIf(
          key -> asked.stream().anyMatch(one -> one.room().equals(name) && one.asksFor(key)));
      keys.forEach(key -> unused.add(name + "." + key));
    }
    assertThat(unused).as("keys that nobody asks for").isEmpty();
  }

  /** A room that is taken in another way would be asked unseen. */
  @Test
  void everyRoomIsTakenByAName() throws IOException {
    Pattern taken = Pattern.compile("(?<!function |\\w)room\\((?!name\\))");
    Pattern named = Pattern.compile("(?m)^const \\w+ = await room\\('[\\w-]+'\\);$");
    for (Path module : JsSpot.modules()) {
      String source = Files.readString(module);
      if (source.contains("from './text.js'")) {
        assertThat(taken.matcher(source).results())
            .as(module.toString())
            .hasSameSizeAs(named.matcher(source).results().toList())
            .isNotEmpty();
      }
    }
  }

  private static Set<String> without(TreeMap<String, ?> these, TreeMap<String, ?> those) {
    Set<String> keys = new TreeSet<>(these.keySet());
    keys.removeAll(those.keySet());
    return keys;
  }

  private static List<AskedKeys> asked() {
    return JsSpot.modules().stream()
        .filter(module -> !module.endsWith("text.js"))
        .flatMap(module -> AskedKeys.of(module).stream())
        .toList();
  }

  private static Set<String> keysOf(String room, Set<String> keys) {
    Set<String> found = new TreeSet<>();
    for (String key : keys) {
      if (key.startsWith(room + ".")) {
        found.add(key.substring(room.length() + 1));
      }
    }
    return found;
  }

  private static TreeMap<String, Set<String>> places(String language) throws IOException {
    TreeMap<String, Set<String>> found = new TreeMap<>();
    for (Path room : rooms(language)) {
      String name = name(room);
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

  private static String name(Path room) {
    return room.getFileName().toString().replace(".json", "");
  }
}
