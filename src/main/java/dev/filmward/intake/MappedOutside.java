package dev.filmward.intake;

import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Knows which rows of a mapped file are none, and how many fields a row may have: those of the
 * header, where columns at the end without heading may be left out, and one more that is empty may
 * follow. One owner, one thread.
 */
final class MappedOutside {
  private final List<String> headings;
  private final int least;
  private final byte[] comment;
  private final byte[] firstHeading;
  private long comments;
  private long blanks;
  private long headers;

  MappedOutside(FileForm form) {
    this.headings = form.headings();
    this.least = FileForm.withoutBlankEnd(headings).size();
    this.comment = form.comments().orElse("").getBytes(StandardCharsets.UTF_8);
    this.firstHeading = headings.get(0).getBytes(StandardCharsets.UTF_8);
  }

  boolean fits(Row row) {
    int columns = headings.size();
    return (row.count >= least && row.count <= columns)
        || (row.count == columns + 1 && row.isEmpty(columns));
  }

  /** Whether a row is none; it is counted then. */
  boolean holds(Row row) {
    if (row.kept() == 0) {
      return false;
    }
    boolean isComment = comment.length > 0 && startsWith(row, comment);
    boolean isBlank = !isComment && row.count == row.kept() && isBlank(row);
    boolean isHeader = !isComment && !isBlank && isHeader(row);
    comments += isComment ? 1 : 0;
    blanks += isBlank ? 1 : 0;
    headers += isHeader ? 1 : 0;
    return isComment || isBlank || isHeader;
  }

  /** What a person should know of what was left out. */
  void note(List<String> notes) {
    if (comments > 0) {
      notes.add(Words.count(comments, "comment line") + " left out");
    }
    if (blanks > 0) {
      notes.add(Words.count(blanks, "line") + " with empty cells only left out");
    }
    if (headers > 0) {
      notes.add("the header came again " + Words.count(headers, "time") + " and was left out");
    }
  }

  private boolean isHeader(Row row) {
    if (!startsWith(row, firstHeading) || !fits(row)) {
      return false;
    }
    for (int i = 0; i < least; i++) {
      if (!HeadText.plain(row.text(i)).equals(headings.get(i))) {
        return false;
      }
    }
    return true;
  }

  private static boolean isBlank(Row row) {
    for (int i = 0; i < row.kept(); i++) {
      if (!row.isEmpty(i)) {
        return false;
      }
    }
    return true;
  }

  private static boolean startsWith(Row row, byte[] sign) {
    int start = row.from + row.start[0];
    if (row.end[0] - row.start[0] < sign.length) {
      return false;
    }
    for (int i = 0; i < sign.length; i++) {
      if (row.bytes[start + i] != sign[i]) {
        return false;
      }
    }
    return true;
  }
}
