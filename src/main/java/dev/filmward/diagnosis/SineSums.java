package dev.filmward.diagnosis;

/** The sums that a sine and a cosine are fitted to values with. Mutable, for one thread. */
final class SineSums {
  private static final double LEAST = 1e-3;

  private int count;
  private double cc;
  private double cs;
  private double ss;
  private double c;
  private double s;

  void add(double angle, double value) {
    double cos = Math.cos(angle);
    double sin = Math.sin(angle);
    cc += cos * cos;
    cs += cos * sin;
    ss += sin * sin;
    c += value * cos;
    s += value * sin;
    count++;
  }

  /** Of least squares; all 0 where the angles cannot tell sine from cosine. */
  Fit fit() {
    double determinant = cc * ss - cs * cs;
    if (!(determinant > LEAST * count)) {
      return new Fit(0, 0, 0);
    }
    double cosine = (ss * c - cs * s) / determinant;
    double sine = (cc * s - cs * c) / determinant;
    return new Fit(cosine, sine, cosine * c + sine * s);
  }

  /**
   * A wave.
   *
   * @param gain squares that it takes off the values
   */
  record Fit(double cosine, double sine, double gain) {
    double at(double angle) {
      return cosine * Math.cos(angle) + sine * Math.sin(angle);
    }

    double amplitude() {
      return Math.hypot(cosine, sine);
    }
  }
}
