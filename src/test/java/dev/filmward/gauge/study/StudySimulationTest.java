package dev.filmward.gauge.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.filmward.stats.ChiSquare;
import dev.filmward.stats.FisherF;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Variances that are known are found again, and limits hold as often as they say. */
class StudySimulationTest {
  private static final long SEED = 20261126;

  /** Standard deviations of part, operator, interaction and repeats, um. */
  private record Truth(double part, double operator, double interaction, double repeat) {
    double gauge() {
      return operator * operator + interaction * interaction + repeat * repeat;
    }

    double percent() {
      return 100 * Math.sqrt(gauge() / (gauge() + part * part));
    }

    double[][][] draw(Random random, int parts, int operators, int trials) {
      double[] people =
          random.doubles(operators).map(u -> operator * random.nextGaussian()).toArray();
      double[][][] um = new double[parts][operators][trials];
      for (double[][] rows : um) {
        double level = 14 + part * random.nextGaussian();
        for (int o = 0; o < operators; o++) {
          double cell = level + people[o] + interaction * random.nextGaussian();
          for (int t = 0; t < trials; t++) {
            rows[o][t] = cell + repeat * random.nextGaussian();
          }
        }
      }
      return um;
    }
  }

  /**
   * The estimates of the kept model are without bias; over 2000 studies of 10 x 6 x 3 their means
   * lie within 5 standard errors, from the variance of a mean square, 2 E(MS)²/df.
   */
  @Test
  void theMeanOfManyEstimatesIsTheTruth() {
    Truth truth = new Truth(0.5, 0.3, 0.3, 0.2);
    Random random = new Random(SEED);
    int studies = 2000;
    double[] sums = new double[4];
    for (int i = 0; i < studies; i++) {
      CrossedReadings readings = Readings.crossed(truth.draw(random, 10, 6, 3));
      StudyAnova anova = StudyAnova.of(readings);
      assertThat(anova.isPooled()).as("seed %d, study %d", SEED, i).isFalse();
      Components raw = Components.of(anova, readings);
      sums[0] += raw.repeatability() / studies;
      sums[1] += raw.interaction() / studies;
      sums[2] += raw.operator() / studies;
      sums[3] += raw.part() / studies;
    }
    double error = 0.04;
    double interaction = error + 3 * 0.09;
    double operator = interaction + 30 * 0.09;
    double part = interaction + 18 * 0.25;
    assertThat(sums[0]).isCloseTo(0.04, within(5 * deviation(error, 120) / Math.sqrt(studies)));
    assertThat(sums[1])
        .isCloseTo(
            0.09,
            within(5 * spread(deviation(interaction, 45), deviation(error, 120), 3, studies)));
    assertThat(sums[2])
        .isCloseTo(
            0.09,
            within(5 * spread(deviation(operator, 5), deviation(interaction, 45), 30, studies)));
    assertThat(sums[3])
        .isCloseTo(
            0.25, within(5 * spread(deviation(part, 9), deviation(interaction, 45), 18, studies)));
  }

  private static double deviation(double meanSquare, double degrees) {
    return meanSquare * Math.sqrt(2 / degrees);
  }

  private static double spread(double one, double other, double divisor, int studies) {
    return Math.hypot(one, other) / divisor / Math.sqrt(studies);
  }

  /** Of 400 studies 95 % hold the truth: 380, standard deviation 4.4; 4 of these either way. */
  @Test
  void theLimitsOfTheShareHoldTheTruthInAboutNinetyFiveOfAHundredStudies() {
    Truth truth = new Truth(0.5, 0.1, 0.12, 0.15);
    Random random = new Random(SEED);
    int held = 0;
    for (int i = 0; i < 400; i++) {
      ShareLimits share = Readings.study(Readings.of(truth.draw(random, 10, 3, 3))).share();
      boolean holds =
          share.percentLower() <= truth.percent() && truth.percent() <= share.percentUpper();
      held += holds ? 1 : 0;
    }
    assertThat(held).as("seed %d", SEED).isBetween(362, 398);
  }

  /**
   * With one operator the limits are known: the ratio of part to repeatability lies between (F/Fu -
   * 1)/n and (F/Fl - 1)/n (Montgomery 2013, section 3.9.3), the variance of the repeatability
   * between SS/chi-square points.
   */
  @Test
  void withOneOperatorTheLimitsAreTheExactOnes() {
    Truth truth = new Truth(0.5, 0, 0, 0.15);
    double[][][] um = truth.draw(new Random(SEED), 10, 1, 3);
    GaugeStudy study = Readings.study(Readings.of(um));
    double f = study.anova().part().f();
    double most = (f / new FisherF(9, 20).quantile(0.025) - 1) / 3;
    double least = (f / new FisherF(9, 20).quantile(0.975) - 1) / 3;
    assertThat(study.share().percentLower())
        .isCloseTo(100 * Math.sqrt(1 / (1 + most)), withinPercentage(1.5));
    assertThat(study.share().percentUpper())
        .isCloseTo(100 * Math.sqrt(1 / (1 + least)), withinPercentage(1.5));
    double squares = study.anova().repeatability().sumOfSquares();
    ChiSquare chiSquare = new ChiSquare(20);
    assertThat(study.share().gaugeLower())
        .isCloseTo(squares / chiSquare.quantile(0.975), withinPercentage(2));
    assertThat(study.share().gaugeUpper())
        .isCloseTo(squares / chiSquare.quantile(0.025), withinPercentage(2));
  }

  @Test
  void theSameReadingsGiveTheSameLimits() {
    StudyReadings readings = Readings.file("study-kept.csv");
    assertThat(Readings.study(readings).share()).isEqualTo(Readings.study(readings).share());
  }
}
