package dev.filmward.cli;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The pages' source files and what they refer to, as addresses. */
final class WebFiles {
  private static final Path ROOT = Path.of("web");
  private static final Pattern REFERENCE =
      Pattern.compile(
          "(?:href|src)=\"([^\"#?]+)\"" // HTML
              + "|url\\(['\"]?([^)'\"]+)['\"]?\\)" // CSS
              + "|(?:from|import\\()\\s*'(\\.[^']+)'"); // JavaScript

  private WebFiles() {}

  /** Every file is served under its own path. */
  static Set<String> addresses() throws IOException {
    Set<String> addresses = new TreeSet<>();
    for (Path file : files()) {
      addresses.add(address(file));
    }
    return addresses;
  }

  /** Where links, scripts, styles, fonts and modules point to. */
  static Set<String> references() throws IOException {
    Set<String> references = new TreeSet<>();
    for (Path file : files()) {
      if (file.toString().matches(".*\\.(html|css|js)")) {
        REFERENCE
            .matcher(Files.readString(file))
            .results()
            .map(WebFiles::target)
            .filter(target -> !target.startsWith("data:") && !target.contains("${"))
            .map(target -> URI.create(address(file)).resolve(target).getPath())
            .forEach(references::add);
      }
    }
    return references;
  }

  private static String target(MatchResult found) {
    return Stream.of(found.group(1), found.group(2), found.group(3))
        .filter(group -> group != null)
        .findFirst()
        .orElseThrow();
  }

  private static String address(Path file) {
    return "/" + ROOT.relativize(file).toString().replace('\\', '/');
  }

  private static Iterable<Path> files() throws IOException {
    try (Stream<Path> all = Files.walk(ROOT)) {
      return all.filter(Files::isRegularFile).sorted().toList();
    }
  }
}
