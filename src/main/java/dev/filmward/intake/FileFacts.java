package dev.filmward.intake;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What a file says outside its rows: in its name and in the lines above its header. Lines are read
 * as {@code key: value}, {@code key = value}, or as two cells. Immutable.
 */
public final class FileFacts {
  private final String fileName;
  private final Map<String, String> preamble;

  private FileFacts(String fileName, Map<String, String> preamble) {
    this.fileName = fileName;
    this.preamble = preamble;
  }

  /**
   * Reads the lines above a header.
   *
   * @param lines those above only
   */
  public static FileFacts of(String fileName, List<HeadText.Line> lines, Separator separator) {
    Map<String, String> preamble = new HashMap<>();
    for (HeadText.Line line : lines) {
      entry(line, separator).ifPresent(e -> preamble.putIfAbsent(key(e.getKey()), e.getValue()));
    }
    return new FileFacts(fileName, preamble);
  }

  /** A line as key and value, if it is one. */
  public static Optional<Map.Entry<String, String>> entry(HeadText.Line line, Separator separator) {
    List<String> cells =
        FileForm.withoutBlankEnd(line.cells(separator)).stream()
            .filter(cell -> !cell.isEmpty())
            .toList();
    if (cells.isEmpty() || cells.size() > 2) {
      return Optional.empty();
    }
    String first = cells.get(0).replaceFirst("^[#;%/*]+\\s*", "");
    if (cells.size() == 2) {
      return entry(first.replaceFirst("\\s*[:=]$", ""), cells.get(1));
    }
    int sign = first.indexOf(':') >= 0 ? first.indexOf(':') : first.indexOf('=');
    return sign > 0
        ? entry(first.substring(0, sign).strip(), first.substring(sign + 1).strip())
        : Optional.empty();
  }

  /** What stands there; empty where nothing does. */
  Optional<String> text(Source.Kind kind, String name, FileForm form) {
    return switch (kind) {
      case CONSTANT -> Optional.of(name);
      case PREAMBLE -> Optional.ofNullable(preamble.get(key(name)));
      case FILE -> form.name().flatMap(pattern -> FileNameForm.of(pattern).part(fileName, name));
      case COLUMN, TAKEN_AT, COUNTED -> Optional.empty();
    };
  }

  private static Optional<Map.Entry<String, String>> entry(String key, String value) {
    return key.isEmpty() || value.isEmpty() ? Optional.empty() : Optional.of(Map.entry(key, value));
  }

  private static String key(String text) {
    return text.toLowerCase(Locale.ROOT);
  }
}
