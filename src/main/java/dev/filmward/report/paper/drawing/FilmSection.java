package dev.filmward.report.paper.drawing;

import java.util.Arrays;
import java.util.List;

/**
 * The film's cross-section to scale, outer face on top, hatched by role. Layers that would be
 * thinner than a line of writing are given that height and marked as broken. Pure.
 */
public final class FilmSection {
  private static final double EDGE_PT = 1;
  private static final double LEAST_PT = 20;
  private static final double SECTION_SHARE = 0.42;

  private FilmSection() {}

  public static Drawing draw(List<Ply> plies, double widthPt, double wishedHeightPt) {
    double heightPt = Math.max(wishedHeightPt, LEAST_PT * plies.size() + 2 * EDGE_PT);
    Sketch sketch = new Sketch(widthPt, heightPt);
    double[] um = plies.stream().mapToDouble(Ply::um).toArray();
    double[] heights = heights(um, heightPt - 2 * EDGE_PT);
    double broken = LEAST_PT * (1 + 1e-9);
    double right = widthPt * SECTION_SHARE;
    double top = EDGE_PT;
    double scale = scale(um, heights);
    for (int i = 0; i < plies.size(); i++) {
      Box band = new Box(EDGE_PT, top, right, top + heights[i]);
      band(plies.get(i), band, sketch);
      if (heights[i] <= broken && um[i] * scale < LEAST_PT * (1 - 1e-6)) {
        scaleBreak(sketch, band);
      }
      top = band.bottom();
    }
    return sketch.drawing();
  }

  private static void band(Ply ply, Box band, Sketch sketch) {
    sketch.fill(band, Ink.PLY);
    ply.role().ifPresent(role -> sketch.hatch(band, Hatch.of(role)));
    sketch.outline(band, 0.8);
    double middle = (band.top() + band.bottom()) / 2;
    sketch.write(band.right() + 8, middle - 4.5, ply.name(), Label.Anchor.START, Label.Tone.STRONG);
    sketch.write(band.right() + 8, middle + 4.5, ply.words(), Label.Anchor.START);
  }

  /** Two slanted strokes with a gap through both edges. */
  private static void scaleBreak(Sketch sketch, Box band) {
    double middle = (band.top() + band.bottom()) / 2;
    for (double x : new double[] {band.left(), band.right()}) {
      sketch.line(x - 4, middle + 1.5, x + 4, middle - 1.5, Ink.PAPER, 3);
      sketch.line(x - 4, middle + 3.2, x + 4, middle + 0.2, Ink.INK, 0.7);
      sketch.line(x - 4, middle - 0.2, x + 4, middle - 3.2, Ink.INK, 0.7);
    }
  }

  /**
   * Heights to scale with a least height. Bands below it are raised; the others share the rest in
   * proportion, repeatedly, since raising one may push another below.
   */
  static double[] heights(double[] um, double totalPt) {
    double least = Math.min(LEAST_PT, totalPt / um.length);
    boolean[] raised = new boolean[um.length];
    double[] heights = new double[um.length];
    boolean isDone = false;
    while (!isDone) {
      isDone = true;
      double free = 0;
      double rest = totalPt;
      for (int i = 0; i < um.length; i++) {
        free += raised[i] ? 0 : um[i];
        rest -= raised[i] ? least : 0;
      }
      for (int i = 0; i < um.length; i++) {
        heights[i] = raised[i] ? least : um[i] * rest / free;
        if (!raised[i] && heights[i] < least) {
          raised[i] = true;
          isDone = false;
        }
      }
    }
    return heights;
  }

  /** Points for a micrometre, of the bands that are to scale. */
  private static double scale(double[] um, double[] heights) {
    int tallest = 0;
    for (int i = 1; i < heights.length; i++) {
      tallest = heights[i] > heights[tallest] ? i : tallest;
    }
    return Arrays.stream(heights).allMatch(h -> h <= LEAST_PT) ? 0 : heights[tallest] / um[tallest];
  }
}
