package dev.filmward.report.paper.drawing;

/**
 * What lies outside the specification, with the words that say so. NaN where a limit is missing.
 * Immutable.
 */
public record SpecLand(double lower, double upper, String belowWords, String aboveWords) {
  /** No specification. */
  public static final SpecLand NONE = new SpecLand(Double.NaN, Double.NaN, "", "");

  private static final double LEAST_PT = 1;
  private static final double WORDS_PT = 9;

  /** Hatched land on both sides of a value axis that runs up the page. */
  void beside(Sketch sketch, Box plot, Span y) {
    if (!Double.isNaN(upper) && y.at(upper) > plot.top() + LEAST_PT) {
      Box land =
          new Box(plot.left(), plot.top(), plot.right(), Math.min(y.at(upper), plot.bottom()));
      sketch.hatch(land, Hatch.LAND);
      if (land.height() > WORDS_PT) {
        sketch.writeOver(
            plot.left() + 4, land.bottom() - 5.5, aboveWords, Label.Anchor.START, Label.Tone.SOFT);
      }
    }
    if (!Double.isNaN(lower) && y.at(lower) < plot.bottom() - LEAST_PT) {
      Box land =
          new Box(plot.left(), Math.max(y.at(lower), plot.top()), plot.right(), plot.bottom());
      sketch.hatch(land, Hatch.LAND);
      if (land.height() > WORDS_PT) {
        sketch.writeOver(
            plot.left() + 4, land.top() + 5.5, belowWords, Label.Anchor.START, Label.Tone.SOFT);
      }
    }
  }

  /** Hatched land on both sides of a value axis that runs across the page. */
  void across(Sketch sketch, Box plot, Span x) {
    if (!Double.isNaN(lower) && x.at(lower) > plot.left() + LEAST_PT) {
      sketch.hatch(
          new Box(plot.left(), plot.top(), Math.min(x.at(lower), plot.right()), plot.bottom()),
          Hatch.LAND);
    }
    if (!Double.isNaN(upper) && x.at(upper) < plot.right() - LEAST_PT) {
      sketch.hatch(
          new Box(Math.max(x.at(upper), plot.left()), plot.top(), plot.right(), plot.bottom()),
          Hatch.LAND);
    }
  }
}
