package dev.filmward.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The form of a file's name, with parts in braces: {@code {roll}_{sample}_{taken_at}}. Folders and
 * the extension do not count; a part is as short as it can be. Immutable.
 */
public final class FileNameForm {
  private static final Pattern PART = Pattern.compile("\\{([a-z_]{0,20})\\}");
  private static final int LONGEST = 255;

  private final List<String> parts = new ArrayList<>();
  private final Pattern pattern;

  private FileNameForm(String form) {
    StringBuilder regex = new StringBuilder();
    Matcher matcher = PART.matcher(form);
    int end = 0;
    while (matcher.find()) {
      regex.append(Pattern.quote(form.substring(end, matcher.start()))).append("(.+?)");
      parts.add(matcher.group(1));
      end = matcher.end();
    }
    regex.append(Pattern.quote(form.substring(end)));
    this.pattern = Pattern.compile(regex.toString(), Pattern.CASE_INSENSITIVE);
  }

  /**
   * Reads a form.
   *
   * @throws IllegalArgumentException if it has no parts, or too many to be told apart
   */
  public static FileNameForm of(String form) {
    FileNameForm read = new FileNameForm(form);
    if (read.parts.isEmpty() || read.parts.size() > 8) {
      throw new IllegalArgumentException(
          Words.quoted(form) + " names no parts; write it like {roll}_{sample}");
    }
    return read;
  }

  /** What a part of a name says; empty where the name is not of this form. */
  public Optional<String> part(String fileName, String part) {
    Matcher matcher = pattern.matcher(stem(fileName));
    int group = parts.indexOf(part) + 1;
    return group > 0 && matcher.matches() ? Optional.of(matcher.group(group)) : Optional.empty();
  }

  /** The parts it names. */
  List<String> parts() {
    return List.copyOf(parts);
  }

  /** A file's name without its folders and its extension. */
  public static String stem(String fileName) {
    String base =
        fileName.substring(Math.max(fileName.lastIndexOf('/'), fileName.lastIndexOf('\\')) + 1);
    int dot = base.lastIndexOf('.');
    String stem = dot > 0 ? base.substring(0, dot) : base;
    return stem.length() > LONGEST ? stem.substring(0, LONGEST) : stem;
  }
}
