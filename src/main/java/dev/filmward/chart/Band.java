package dev.filmward.chart;

/** A lower limit, a centre line and an upper limit, in the unit of what is charted. Immutable. */
public record Band(double lower, double centre, double upper) {

  public Band {
    if (!(lower <= centre) || !(centre <= upper)) {
      throw new IllegalArgumentException(
          "a band ascends; not " + lower + ", " + centre + ", " + upper);
    }
  }
}
