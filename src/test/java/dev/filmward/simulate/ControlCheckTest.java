package dev.filmward.simulate;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.simulate.ControlCheck.Finding;
import dev.filmward.simulate.ControlCheck.Twice;
import dev.filmward.simulate.ExpectedAlarm.Side;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Subgroups of five with the range 2.326 have sigma 1 (d2 = 2.326), so means have sigma 1/sqrt(5) =
 * 0.447: one, two and three sigma are 0.447, 0.894 and 1.342 from the centre 10. The range limit is
 * 2.326 + 3 x 0.864 = 4.918.
 */
class ControlCheckTest {

  @Test
  void aMeanBeyondThreeSigmaIsFoundAtOnce() {
    assertThat(after(11.35)).containsExactly(new Finding(25, Side.HIGH));
    assertThat(after(11.33)).isEmpty();
  }

  @Test
  void twoOfThreeBeyondTwoSigmaIsFoundAtTheSecondPointThatFulfilsIt() {
    assertThat(after(9.1, 9.1, 9.1)).containsExactly(new Finding(27, Side.LOW));
    assertThat(after(9.1, 9.1)).isEmpty();
  }

  @Test
  void fourOfFiveBeyondOneSigmaIsFoundAtTheFifth() {
    assertThat(after(10.5, 10.5, 10.5, 10.5, 10.5)).containsExactly(new Finding(29, Side.HIGH));
    assertThat(after(10.5, 10.5, 10.5, 10.4, 10.5)).isEmpty();
  }

  @Test
  void aRunOfEightIsFoundAtTheNinth() {
    double up = 10.1;
    assertThat(after(up, up, up, up, up, up, up, up)).isEmpty();
    assertThat(after(up, up, up, up, up, up, up, up, up))
        .containsExactly(new Finding(33, Side.HIGH));
  }

  @Test
  void aWideRangeIsFoundTheSecondTime() {
    List<double[]> subgroups = baseline();
    subgroups.add(subgroup(10, 4.93));
    subgroups.add(subgroup(10, 4.93));
    assertThat(found(subgroups)).containsExactly(new Finding(26, Side.SPREAD));
    subgroups.set(25, subgroup(10, 4.91));
    assertThat(found(subgroups)).isEmpty();
  }

  private static List<Finding> after(double... means) {
    List<double[]> subgroups = baseline();
    for (double mean : means) {
      subgroups.add(subgroup(mean, 2.326));
    }
    return found(subgroups);
  }

  private static List<Finding> found(List<double[]> subgroups) {
    return ControlCheck.findings(subgroups, 1, Twice.SAME_TEST_AND_SIDE);
  }

  /** Means 10.2 and 9.8 in turn, within one sigma, around a single 10. */
  private static List<double[]> baseline() {
    List<double[]> subgroups = new ArrayList<>();
    for (int i = 0; i < 24; i++) {
      subgroups.add(subgroup(i % 2 == 0 ? 10.2 : 9.8, 2.326));
    }
    subgroups.add(subgroup(10, 2.326));
    return subgroups;
  }

  private static double[] subgroup(double mean, double range) {
    return new double[] {mean - range / 2, mean, mean, mean, mean + range / 2};
  }
}
