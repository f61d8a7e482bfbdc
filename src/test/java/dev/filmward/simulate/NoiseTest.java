package dev.filmward.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class NoiseTest {
  private static final int COUNT = 200_000;

  /**
   * First outputs of the public-domain reference program splitmix64.c (S. Vigna, 2015) for the seed
   * 1234567.
   */
  @Test
  void theBitsAreThoseOfTheReferenceProgramOfSplitMix64() {
    SplittableRandom random = new SplittableRandom(1234567);
    assertThat(IntStream.range(0, 5).mapToLong(i -> random.nextLong()).toArray())
        .containsExactly(
            6457827717110365317L,
            3203168211198807973L,
            Long.parseUnsignedLong("9817491932198370423"),
            4593380528125082431L,
            Long.parseUnsignedLong("16408922859458223821"));
  }

  @Test
  void aUniformNumberIsTheTopFiftyThreeBits() {
    assertThat(new Noise(1234567).uniform())
        .isEqualTo((6457827717110365317L >>> 11) / Math.pow(2, 53));
  }

  /** Standard errors of the mean and the variance of n normal numbers: 1/sqrt(n), sqrt(2/n). */
  @Test
  void normalNumbersHaveMeanZeroAndVarianceOne() {
    double[] z = normals();
    double mean = IntStream.range(0, COUNT).mapToDouble(i -> z[i]).sum() / COUNT;
    double square = IntStream.range(0, COUNT).mapToDouble(i -> z[i] * z[i]).sum() / COUNT;
    assertThat(mean).isCloseTo(0, within(4 / Math.sqrt(COUNT)));
    assertThat(square).isCloseTo(1, within(4 * Math.sqrt(2.0 / COUNT)));
  }

  /** Printed tables of the normal distribution: 31.731 %, 4.550 % and 0.270 % lie outside. */
  @Test
  void asManyNormalNumbersLieBeyondOneTwoAndThreeSigmaAsTablesSay() {
    double[] outside = {0.31731, 0.04550, 0.00270};
    double[] z = normals();
    for (int sigmas = 1; sigmas <= 3; sigmas++) {
      int limit = sigmas;
      double p = outside[sigmas - 1];
      double share =
          IntStream.range(0, COUNT).filter(i -> Math.abs(z[i]) > limit).count() / (double) COUNT;
      assertThat(share).isCloseTo(p, within(4 * Math.sqrt(p * (1 - p) / COUNT)));
    }
  }

  @Test
  void neighbouringSamplesSeedsAndStreamsHaveNothingInCommon() {
    assertThat(
            new double[] {
              Noise.ofReadings(1, 0).uniform(),
              Noise.betweenSamples(1, 0).uniform(),
              Noise.ofReadings(1, 1).uniform(),
              Noise.ofReadings(2, 0).uniform()
            })
        .doesNotHaveDuplicates();
  }

  private static double[] normals() {
    Noise noise = new Noise(7);
    return IntStream.range(0, COUNT).mapToDouble(i -> noise.normal()).toArray();
  }
}
