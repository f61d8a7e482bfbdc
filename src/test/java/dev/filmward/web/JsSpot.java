package dev.filmward.web;

import dev.filmward.web.JsPiece.Group;
import dev.filmward.web.JsPiece.Text;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A piece of a module where it stands.
 *
 * @param around the pieces beside it and itself
 * @param index its place among them
 * @param within the brackets or the text that hold it, null at the top
 */
record JsSpot(List<JsPiece> around, int index, @Nullable JsSpot within) {
  private static final Path MODULES = Path.of("web/app");

  /** All modules of the pages. */
  static List<Path> modules() {
    try (Stream<Path> files = Files.list(MODULES)) {
      return files.filter(file -> file.toString().endsWith(".js")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Every piece of a module, outer ones first. */
  static List<JsSpot> of(String source) {
    List<JsSpot> spots = new ArrayList<>();
    add(JsReader.read(source), null, spots);
    return spots;
  }

  private static void add(List<JsPiece> pieces, @Nullable JsSpot within, List<JsSpot> spots) {
    for (int i = 0; i < pieces.size(); i++) {
      JsSpot spot = new JsSpot(pieces, i, within);
      spots.add(spot);
      if (pieces.get(i) instanceof Group group) {
        add(group.pieces(), spot, spots);
      } else if (pieces.get(i) instanceof Text text) {
        text.holes().forEach(hole -> add(hole, spot, spots));
      }
    }
  }

  JsPiece piece() {
    return around.get(index);
  }

  /** The piece so many places further; empty beyond the first and the last. */
  Optional<JsPiece> beside(int by) {
    int there = index + by;
    return there < 0 || there >= around.size() ? Optional.empty() : Optional.of(around.get(there));
  }

  boolean isBeside(int by, String text) {
    return beside(by).filter(piece -> JsPiece.is(piece, text)).isPresent();
  }

  /** Where the stretch between two commas or semicolons begins in which this stands. */
  int start() {
    int start = index;
    while (start > 0 && !endsAStretch(around.get(start - 1))) {
      start--;
    }
    return start;
  }

  static boolean endsAStretch(JsPiece piece) {
    return JsPiece.is(piece, ",") || JsPiece.is(piece, ";");
  }
}
