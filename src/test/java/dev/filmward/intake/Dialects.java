package dev.filmward.intake;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * An export of our own invention with the readings that it holds, written out by hand. The file's
 * text stands between two marks; its encoding is applied here.
 *
 * @param readings {@code time|line|structure|roll|sample|lane|position|um}, a dash for missing
 */
record Dialects(
    String name,
    String fileName,
    byte[] bytes,
    Map<String, String> answers,
    long quarantined,
    List<String> readings) {
  private static final Path FOLDER = Path.of("src/test/resources/dev/filmward/intake/dialects");

  static List<Dialects> all() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      return files.sorted().map(Dialects::read).toList();
    }
  }

  private static Dialects read(Path file) {
    try {
      String text = Files.readString(file);
      int start = text.indexOf("--- file\n");
      int end = text.indexOf("\n--- readings\n");
      Map<String, String> head = new LinkedHashMap<>();
      text.substring(0, start)
          .lines()
          .forEach(line -> head.put(line.split(": ?", 2)[0], line.split(": ?", 2)[1]));
      Map<String, String> answers = new LinkedHashMap<>();
      String answer = head.getOrDefault("answers", "");
      int sign = answer.indexOf('=');
      if (sign > 0) {
        answers.put(answer.substring(0, sign), answer.substring(sign + 1));
      }
      return new Dialects(
          file.getFileName().toString(),
          head.getOrDefault("file", ""),
          encoded(text.substring(start + 9, end), head.getOrDefault("encoding", "utf-8")),
          answers,
          Long.parseLong(head.getOrDefault("quarantined", "0")),
          text.substring(end + 14).lines().toList());
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static byte[] encoded(String text, String encoding) {
    return switch (encoding) {
      case "utf-8-bom" -> ("\uFEFF" + text).getBytes(StandardCharsets.UTF_8);
      case "utf-16le-bom" -> ("\uFEFF" + text).getBytes(StandardCharsets.UTF_16LE);
      case "utf-16be" -> text.getBytes(StandardCharsets.UTF_16BE);
      default -> text.getBytes(Charset.forName(encoding));
    };
  }
}
