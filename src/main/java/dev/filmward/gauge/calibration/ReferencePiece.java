package dev.filmward.gauge.calibration;

/**
 * A piece of known thickness. Immutable.
 *
 * @param name what is written on it
 * @param expandedUm expanded uncertainty of its thickness, um; 0 where nothing is known of it
 * @param k coverage factor of that: 2 for about 95 %
 * @param material its resin, in words
 * @param howKnown how its thickness was found: contact gauge, weighing, certificate
 */
public record ReferencePiece(
    String name,
    double thicknessUm,
    double expandedUm,
    double k,
    String material,
    String howKnown) {
  private static final double THICKEST_UM = 100_000;
  private static final double GREATEST_K = 10;

  public ReferencePiece {
    if (name.isBlank()) {
      throw new IllegalArgumentException("a reference piece needs a name, as written on it");
    }
    if (!(thicknessUm > 0 && thicknessUm <= THICKEST_UM)) {
      throw new IllegalArgumentException(
          "piece \"" + name + "\": its thickness is in um, above 0, not " + thicknessUm);
    }
    if (!(expandedUm >= 0 && expandedUm < thicknessUm)) {
      throw new IllegalArgumentException(
          "piece \""
              + name
              + "\": its expanded uncertainty is in um, 0 or more and less than its thickness, not "
              + expandedUm);
    }
    if (!(k >= 1 && k <= GREATEST_K)) {
      throw new IllegalArgumentException(
          "piece \"" + name + "\": the coverage factor k is 1 to 10, mostly 2, not " + k);
    }
  }

  /** Standard uncertainty of its thickness, um. */
  public double standardUm() {
    return expandedUm / k;
  }
}
