package dev.filmward.gauge.study;

/**
 * What the variance of the readings is made of, in um². As estimated, all but the repeatability may
 * be negative; {@link #shown} has 0 in their place. Immutable.
 *
 * <p>Source: Montgomery (2013), section 13.3, estimates by the expected mean squares.
 *
 * @param repeatability one operator measuring one part again and again
 * @param operator between operators, whatever the part
 * @param interaction between operators, other for each part
 * @param part between the parts themselves
 */
public record Components(double repeatability, double operator, double interaction, double part) {

  public Components {
    if (!(repeatability >= 0) || !Double.isFinite(repeatability + operator + interaction + part)) {
      throw new IllegalArgumentException(
          "no components: " + repeatability + ", " + operator + ", " + interaction + ", " + part);
    }
  }

  static Components of(StudyAnova anova, CrossedReadings readings) {
    double parts = readings.parts().size();
    double operators = readings.operators().size();
    double trials = readings.trials();
    double error = anova.error().meanSquare();
    double partMean = anova.part().part().meanSquare();
    if (anova.operator().isEmpty() || anova.interaction().isEmpty()) {
      return new Components(error, 0, 0, (partMean - error) / trials);
    }
    double operatorMean = anova.operator().get().part().meanSquare();
    double against = anova.isPooled() ? error : anova.interaction().get().part().meanSquare();
    return new Components(
        error,
        (operatorMean - against) / (parts * trials),
        anova.isPooled() ? 0 : (against - error) / trials,
        (partMean - against) / (operators * trials));
  }

  public Components shown() {
    return new Components(
        repeatability, Math.max(0, operator), Math.max(0, interaction), Math.max(0, part));
  }

  /** Of operators in all: their own and their interaction with parts. */
  public double reproducibility() {
    return operator + interaction;
  }

  /** Repeatability and reproducibility together. */
  public double gauge() {
    return repeatability + reproducibility();
  }

  public double total() {
    return gauge() + part;
  }
}
