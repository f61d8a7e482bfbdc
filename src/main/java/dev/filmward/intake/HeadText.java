package dev.filmward.intake;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.util.ArrayList;
import java.util.List;

/**
 * The beginning of a file as text, in lines. A line that opens a quotation mark takes up to five
 * more with it, for headings that are broken within quotation marks; blank lines are kept. Spaces
 * of every kind count as one space. Immutable.
 *
 * @param marked whether the file starts with a byte order mark
 * @param lines as they stand in the file, the last one too if the beginning ends there
 */
public record HeadText(Encoding encoding, Mark marked, List<Line> lines) {
  /** How many bytes are looked at. */
  public static final int LOOKED_AT = 256 * 1024;

  private static final int MOST_JOINED = 5;

  /** Whether a file starts with a byte order mark. */
  public enum Mark {
    THERE,
    ABSENT
  }

  /**
   * One line, or some that quotation marks hold together.
   *
   * @param number of the first, from 1
   * @param count how many lines of the file it takes
   */
  public record Line(int number, int count, String text) {
    public boolean isBlank() {
      return text.isBlank();
    }

    /** Its cells; spaces around them are left out and those within are single ones. */
    public List<String> cells(Separator separator) {
      return HeaderText.split(text, separator).stream().map(HeadText::plain).toList();
    }
  }

  public HeadText {
    lines = List.copyOf(lines);
  }

  /**
   * Looks at the beginning of a file.
   *
   * @param head at most {@value #LOOKED_AT} bytes; fewer are a whole file
   */
  public static HeadText of(byte[] head) {
    try {
      Utf8Input input = Utf8Input.open(new ByteArrayInputStream(head));
      byte[] bytes = input.stream().readAllBytes();
      String text = new Text().of(bytes, 0, bytes.length);
      return new HeadText(input.encoding(), markOf(head), lines(text, head.length < LOOKED_AT));
    } catch (IOException e) {
      throw new IllegalStateException("bytes in memory cannot be read", e);
    }
  }

  /** Takes the beginning off a stream; {@link #again} puts it back. */
  public static byte[] take(InputStream in) throws IOException {
    return in.readNBytes(LOOKED_AT);
  }

  /** How a mapping calls a column. */
  public static String columnName(List<String> headings, int index) {
    String heading = headings.get(index);
    boolean clear =
        !heading.isEmpty()
            && !heading.startsWith("#")
            && headings.indexOf(heading) == headings.lastIndexOf(heading);
    return clear ? heading : "#" + (index + 1);
  }

  static InputStream again(byte[] head, InputStream rest) {
    return new SequenceInputStream(new ByteArrayInputStream(head), rest);
  }

  /** A heading with single spaces. */
  public static String plain(String cell) {
    return cell.replaceAll("[\\s\\u00a0\\u2009\\u202f]+", " ").strip();
  }

  private static Mark markOf(byte[] head) {
    int first = head.length > 1 ? (head[0] & 0xFF) << 8 | (head[1] & 0xFF) : 0;
    return first == 0xEFBB || first == 0xFFFE || first == 0xFEFF ? Mark.THERE : Mark.ABSENT;
  }

  private static List<Line> lines(String text, boolean whole) {
    String end = text.indexOf('\n') < 0 ? "\r" : "\n";
    List<String> parts = List.of(text.split(end, -1));
    int count = whole || parts.size() == 1 ? parts.size() : parts.size() - 1;
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < count; ) {
      int taken = joined(parts, i, count);
      String joined = String.join("\n", parts.subList(i, i + taken));
      lines.add(new Line(i + 1, taken, joined.replace("\r", "")));
      i += taken;
    }
    return lines;
  }

  private static int joined(List<String> parts, int from, int count) {
    long marks = 0;
    for (int i = from; i < Math.min(count, from + MOST_JOINED + 1); i++) {
      marks += parts.get(i).chars().filter(sign -> sign == '"').count();
      if (marks % 2 == 0) {
        return i - from + 1;
      }
    }
    return 1;
  }
}
