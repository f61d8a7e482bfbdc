package dev.filmward.report.paper;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * The fonts of the paper, which are in the jar: a sans with tabular figures in two weights, and a
 * wide one for names in other scripts. Immutable after they were read.
 */
final class Fonts {
  static final String SANS = "Filmward Paper";
  static final String REST = "Filmward Rest";
  static final String REGULAR_FILE = "FilmwardPaper-Regular.ttf";
  static final String BOLD_FILE = "FilmwardPaper-Bold.ttf";
  static final String REST_FILE = "DejaVuSans.ttf";

  /** Read once, at first use. */
  private static final class Held {
    private static final Set<Integer> CHARACTERS = characters();
  }

  private Fonts() {}

  static InputStream open(String file) {
    InputStream in = Fonts.class.getResourceAsStream("font/" + file);
    if (in == null) {
      throw new IllegalStateException("the font " + file + " is not in the jar");
    }
    return in;
  }

  static String base64(String file) {
    try (InputStream in = open(file)) {
      return Base64.getEncoder().encodeToString(in.readAllBytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Whether one of the fonts has it. */
  static boolean has(int character) {
    return Held.CHARACTERS.contains(character);
  }

  private static Set<Integer> characters() {
    Set<Integer> found = new HashSet<>();
    for (String file : List.of(REGULAR_FILE, REST_FILE)) {
      try (InputStream in = open(file);
          TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(in))) {
        CmapLookup cmap = font.getUnicodeCmapLookup();
        for (int character = 0x20; character <= Character.MAX_CODE_POINT; character++) {
          if (cmap.getGlyphId(character) != 0) {
            found.add(character);
          }
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    return Set.copyOf(found);
  }
}
