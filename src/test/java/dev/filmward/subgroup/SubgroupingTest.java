package dev.filmward.subgroup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Films;
import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SubgroupingTest {
  private static final Instant NOON = Instant.parse("2026-11-02T12:00:00Z");
  private static final SampleKey KEY = new SampleKey("Blown 1", "F-2", "R1", "S1");
  private static final double GAP = Double.NaN;

  private final Structure structure = Films.fedBy("F-2", "A", "B");
  private final Subgrouping subgrouping = Subgrouping.withShares(structure);

  @Test
  void sumsUpTheReadingsOfALayer() {
    Subgroup skin = of(sample(new double[] {10, 12, 14}, new double[] {30, 30, 30}), 0);
    assertThat(skin.size()).isEqualTo(3);
    assertThat(skin.mean()).isEqualTo(12);
    assertThat(skin.range()).isEqualTo(4);
    assertThat(skin.sumOfSquares()).isEqualTo(4 + 0 + 4);
  }

  @Test
  void aMissingReadingMakesTheSubgroupSmaller() {
    Subgroup skin = of(sample(new double[] {10, GAP, 14}, new double[] {30, 30, 30}), 0);
    assertThat(skin.size()).isEqualTo(2);
    assertThat(skin.mean()).isEqualTo(12);
  }

  @Test
  void theTotalIsOfLanesWhereAllLayersWereMeasured() {
    Subgroup total = of(sample(new double[] {10, GAP, 14}, new double[] {30, 31, 32}), 2);
    assertThat(total.size()).isEqualTo(2);
    assertThat(total.least()).isEqualTo(40);
    assertThat(total.greatest()).isEqualTo(46);
  }

  @Test
  void aShareIsAPartOfTheTotalOfItsLane() {
    Subgroup share = of(sample(new double[] {10, 20}, new double[] {30, 20}), 3);
    assertThat(share.mean()).isEqualTo((10.0 / 40 + 20.0 / 40) / 2, within(1e-15));
  }

  @Test
  void whatWasMeasuredNowhereHasNoSubgroup() {
    Sample sample = sample(new double[] {GAP, GAP}, new double[] {30, 20});
    assertThat(subgrouping.of(sample, subgrouping.characteristics().get(0))).isEmpty();
    assertThat(subgrouping.of(sample, Characteristic.total())).isEmpty();
  }

  @Test
  void assemblesSamplesWhoseRowsAreMixedAndSaysASecondValueInAPartOfItsOwn() {
    List<Sample> samples = new ArrayList<>();
    SampleAssembler assembler = new SampleAssembler(draft -> samples.add(draft.toSample()));
    SampleKey other = new SampleKey("Blown 1", "F-2", "R1", "S2");
    assembler.reading(KEY, NOON.plusSeconds(5), structure, 1, 2, 12);
    assembler.reading(other, NOON, structure, 1, 1, 99);
    assembler.reading(KEY, NOON, structure, 1, 1, 11);
    assembler.reading(KEY, NOON, structure, 1, 1, 11);
    assembler.missing(KEY, NOON, structure, 2, 1);
    assembler.reading(KEY, NOON, structure, 1, 2, 13);
    assembler.finish();
    assertThat(samples).hasSize(3);
    assertThat(samples.get(0))
        .isEqualTo(new Sample(KEY, NOON, new int[] {1, 2}, new double[][] {{11, 12}, {GAP, GAP}}));
    assertThat(samples.get(2).thicknessUm(1, 0)).isEqualTo(13);
    assertThat(assembler.repeated()).isEqualTo(1);
  }

  @Test
  void keepsALargeCommonPartFromSpoilingTheSpread() {
    // (36 + 9 + 9 + 36) / 3 around the mean of 10, whatever is added to all four
    Subgroup subgroup = Subgroup.of(new double[] {1e9 + 4, 1e9 + 7, 1e9 + 13, 1e9 + 16}, 4);
    assertThat(subgroup.sumOfSquares() / 3).isEqualTo(30);
  }

  private Subgroup of(Sample sample, int index) {
    return subgrouping.of(sample, subgrouping.characteristics().get(index)).orElseThrow();
  }

  private static Sample sample(double[] skin, double[] core) {
    int[] lanes = new int[skin.length];
    for (int i = 0; i < lanes.length; i++) {
      lanes[i] = i + 1;
    }
    return new Sample(KEY, NOON, lanes, new double[][] {skin, core});
  }
}
