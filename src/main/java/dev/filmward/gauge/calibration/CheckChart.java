package dev.filmward.gauge.calibration;

import dev.filmward.stats.ChartConstants;
import dev.filmward.stats.Moments;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * The chart of single readings of a check standard, and their bias. Immutable.
 *
 * <p>Limits, at three standard deviations: where the deviation of single readings was stated, about
 * the reference thickness with that and the reference's uncertainty together; else, from {@value
 * #ENOUGH} readings on, about the mean of the first {@value #ENOUGH} with their mean moving range /
 * d2(2); before that about the reference thickness with its uncertainty alone, where one was
 * stated. Bias is the mean of all readings less the reference thickness, and real where it is more
 * than twice its standard uncertainty. Source: individuals chart as in ISO 7870-2; bias as in JCGM
 * 100:2008, 4.2 (from memory).
 */
public record CheckChart(Basis basis, OptionalDouble centreUm, OptionalDouble sigmaUm, Bias bias) {
  static final int ENOUGH = 8;
  private static final double REACH = 3;

  /** Where limits come from. */
  public enum Basis {
    STATED,
    FIRST_READINGS,
    REFERENCE,
    NONE_YET;

    /** As written in addresses. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /**
   * Mean of all readings less the reference thickness.
   *
   * @param um empty where there is no reading
   * @param standardUm its standard uncertainty; empty where it cannot be told
   */
  public record Bias(int readings, OptionalDouble um, OptionalDouble standardUm) {
    /** Whether it is more than chance; false where that cannot be told. */
    public boolean isReal() {
      return um.isPresent()
          && standardUm.isPresent()
          && Math.abs(um.getAsDouble()) > 2 * standardUm.getAsDouble();
    }
  }

  /** Draws the chart of readings in the order of time. */
  public static CheckChart of(CheckStandard standard, List<CheckReading> readings) {
    double reference = standard.film().thicknessUm();
    double uReference = standard.film().standardUm();
    Bias bias = bias(standard, readings);
    if (standard.sigmaUm().isPresent()) {
      double sigma = Math.hypot(standard.sigmaUm().getAsDouble(), uReference);
      return about(Basis.STATED, reference, sigma, bias);
    }
    if (readings.size() >= ENOUGH) {
      List<CheckReading> first = readings.subList(0, ENOUGH);
      return about(Basis.FIRST_READINGS, moments(first).mean(), movingSigma(first), bias);
    }
    return uReference > 0
        ? about(Basis.REFERENCE, reference, uReference, bias)
        : new CheckChart(Basis.NONE_YET, OptionalDouble.empty(), OptionalDouble.empty(), bias);
  }

  /** Whether a reading lies beyond the limits; false where there are none yet. */
  public boolean isBeyond(double um) {
    return centreUm.isPresent()
        && sigmaUm.isPresent()
        && Math.abs(um - centreUm.getAsDouble()) > REACH * sigmaUm.getAsDouble();
  }

  /** The greatest difference of neighbours that is still usual: D4 of their mean. */
  public OptionalDouble greatestMovingRangeUm() {
    return sigmaUm.isPresent()
        ? OptionalDouble.of(ChartConstants.factorD2(2) * sigmaUm.getAsDouble())
        : OptionalDouble.empty();
  }

  private static CheckChart about(Basis basis, double centre, double sigma, Bias bias) {
    return new CheckChart(basis, OptionalDouble.of(centre), OptionalDouble.of(sigma), bias);
  }

  private static Bias bias(CheckStandard standard, List<CheckReading> readings) {
    Moments all = moments(readings);
    if (readings.isEmpty()) {
      return new Bias(0, OptionalDouble.empty(), OptionalDouble.empty());
    }
    double um = all.mean() - standard.film().thicknessUm();
    OptionalDouble spread =
        all.standardDeviation().isPresent() ? all.standardDeviation() : standard.sigmaUm();
    OptionalDouble standardUm =
        spread.isPresent()
            ? OptionalDouble.of(
                Math.hypot(
                    spread.getAsDouble() / Math.sqrt(readings.size()),
                    standard.film().standardUm()))
            : OptionalDouble.empty();
    return new Bias(readings.size(), OptionalDouble.of(um), standardUm);
  }

  private static Moments moments(List<CheckReading> readings) {
    Moments moments = new Moments();
    readings.forEach(reading -> moments.add(reading.um()));
    return moments;
  }

  private static double movingSigma(List<CheckReading> readings) {
    double sum = 0;
    for (int i = 1; i < readings.size(); i++) {
      sum += Math.abs(readings.get(i).um() - readings.get(i - 1).um());
    }
    return sum / (readings.size() - 1) / ChartConstants.d2(2);
  }
}
