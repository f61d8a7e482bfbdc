package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The forms of a language's sayings, as {@code web/app/said.js} recognises them. */
final class Sayings {
  static final Path TEXTS = Path.of("web/text");
  static final Pattern PLACE = Pattern.compile("\\{(\\w*)\\}");
  private final Map<String, String> texts = new TreeMap<>();
  private final List<Pattern> patterns;

  Sayings(String language) {
    rooms(language).forEach(room -> texts.putAll(of(language, room)));
    patterns = texts.keySet().stream().map(Sayings::pattern).toList();
  }

  static List<String> rooms(String language) {
    try (Stream<Path> files = Files.list(TEXTS.resolve(language).resolve("said"))) {
      return files
          .map(file -> file.getFileName().toString().replace(".json", ""))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The forms of one room with what they become. */
  static Map<String, String> of(String language, String room) {
    try {
      JsonNode read =
          new ObjectMapper()
              .readTree(TEXTS.resolve(language).resolve("said/" + room + ".json").toFile());
      Map<String, String> found = new TreeMap<>();
      read.properties().forEach(entry -> found.put(entry.getKey(), entry.getValue().asText()));
      return found;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  Map<String, String> texts() {
    return texts;
  }

  /** Whether a form takes a text as a whole, with a small or a capital letter at its beginning. */
  boolean knows(String text) {
    String small = text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1);
    return patterns.stream()
        .anyMatch(form -> form.matcher(text).matches() || form.matcher(small).matches());
  }

  static Pattern pattern(String form) {
    StringBuilder pattern = new StringBuilder();
    int end = 0;
    for (var place : PLACE.matcher(form).results().toList()) {
      pattern
          .append(Pattern.quote(form.substring(end, place.start())))
          .append(place.group(1).equals("n") ? "([-+\u2212]?[\\d.]+|\u2022)" : "(.+?)");
      end = place.end();
    }
    return Pattern.compile(pattern + Pattern.quote(form.substring(end)), Pattern.DOTALL);
  }
}
