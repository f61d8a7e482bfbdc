package dev.filmward.intake;

import java.util.ArrayList;
import java.util.List;

/** The first line of a file, split into headings by one separator; headings may be quoted. */
final class HeaderText {
  private enum State {
    BEFORE,
    PLAIN,
    QUOTED
  }

  private final String line;
  private final char separator;
  private final List<String> headings = new ArrayList<>();
  private final StringBuilder heading = new StringBuilder();
  private State state = State.BEFORE;

  private HeaderText(String line, char separator) {
    this.line = line;
    this.separator = separator;
  }

  static List<String> split(String line, Separator separator) {
    HeaderText text = new HeaderText(line, separator.sign());
    for (int i = 0; i < line.length(); i++) {
      i += text.take(i);
    }
    text.endHeading();
    return text.headings;
  }

  /** Takes one sign, and says how many of the following it took with it. */
  private int take(int index) {
    char sign = line.charAt(index);
    if (state == State.QUOTED) {
      if (sign != '"') {
        heading.append(sign);
      } else if (line.startsWith("\"", index + 1)) {
        heading.append(sign);
        return 1;
      } else {
        state = State.PLAIN;
      }
    } else if (sign == separator) {
      endHeading();
    } else if (state == State.BEFORE && sign == '"') {
      state = State.QUOTED;
    } else if (state == State.PLAIN || !Character.isWhitespace(sign)) {
      heading.append(sign);
      state = State.PLAIN;
    }
    return 0;
  }

  private void endHeading() {
    headings.add(heading.toString().strip());
    heading.setLength(0);
    state = State.BEFORE;
  }
}
