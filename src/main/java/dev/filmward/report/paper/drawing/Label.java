package dev.filmward.report.paper.drawing;

/**
 * A word in a drawing. Kept apart from the shapes, so that paper can set it as real text in the
 * report's own font. Immutable.
 *
 * @param x of the anchor, points from the left
 * @param y of the middle of the line, points from the top
 */
public record Label(double x, double y, String text, Anchor anchor, Tone tone, Ground ground) {
  /** Which part of the text stands at x. */
  public enum Anchor {
    START,
    MIDDLE,
    END
  }

  /** What it stands on: clear paper, or marks that it must be read before. */
  public enum Ground {
    CLEAR,
    MARKED
  }

  /** How loud it is. */
  public enum Tone {
    INK,
    SOFT,
    STRONG
  }
}
