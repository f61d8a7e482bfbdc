package dev.filmward.report.paper;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Style sheets of the paper, from the jar. */
final class Styles {
  private Styles() {}

  static String sheet(Sheet size) {
    return "@page { size: " + size.css() + "; }\n" + read("both.css") + read("sheet.css");
  }

  static String screen() {
    return face("400", Fonts.REGULAR_FILE)
        + face("700", Fonts.BOLD_FILE)
        + read("both.css")
        + read("screen.css");
  }

  private static String face(String weight, String file) {
    return "@font-face { font-family: \""
        + Fonts.SANS
        + "\"; font-weight: "
        + weight
        + "; src: url(data:font/ttf;base64,"
        + Fonts.base64(file)
        + ") format(\"truetype\"); }\n";
  }

  private static String read(String name) {
    try (InputStream in = Styles.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the style sheet " + name + " is not in the jar");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
