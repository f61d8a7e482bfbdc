package dev.filmward.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Layers of 15 um (skin 10 and tie 5) and 36 um (core 25 and seal 10 by target), three lanes. */
class EventTest {
  private static final Structure FILM = TwoLayers.STRUCTURE;
  private static final Reach EVERYWHERE = Reach.everywhere(FILM);

  @Test
  void aStepActsFromItsFirstSampleUntilItsEnd() {
    List<Sample> samples = TwoLayers.still(new Step(new Span(2, 4), EVERYWHERE, -0.04)).samples(5);
    assertThat(layer(samples, 1)).containsExactly(15, 15, 14.4, 14.4, 15);
    assertThat(layer(samples, 2)).containsExactly(36, 36, 34.56, 34.56, 36);
  }

  @Test
  void aDriftGrowsWithEachSampleUpToItsCap() {
    Event drift = new Drift(Span.from(1), EVERYWHERE, -0.01, 0.025);
    assertThat(layer(TwoLayers.still(drift).samples(5), 1))
        .containsExactly(15, 14.85, 14.7, 14.625, 14.625);
    Event thicker = new Drift(new Span(1, 3), EVERYWHERE, 0.01, 0.5);
    assertThat(layer(TwoLayers.still(thicker).samples(4), 1)).containsExactly(15, 15.15, 15.3, 15);
  }

  @Test
  void aScreenFillsUpIsChangedAndFillsUpAgain() {
    Event blinding = new ScreenBlinding(1, EVERYWHERE, 0.01, 2, 1);
    assertThat(layer(TwoLayers.still(blinding).samples(7), 1))
        .containsExactly(15, 14.85, 14.7, 15, 14.85, 14.7, 15);
  }

  @Test
  void oneLaneBecomesThinAndTheOthersKeepTheMean() {
    LaneOff off = new LaneOff(Span.from(0), EVERYWHERE, 3, -0.06, 0);
    assertThat(lanes(off)).containsExactly(15, 15, 14.1);
    assertThat(lanes(off.keepingTheMean(3))).containsExactly(15.45, 15.45, 14.1);
  }

  @Test
  void echoesAreLostOnlyWhereTheEventReaches() {
    Event lost = new LostEcho(Span.from(1), Reach.extruder(FILM, "B"), 3);
    List<Sample> samples = TwoLayers.still(lost).samples(2);
    assertThat(samples.get(0).readings()).isEqualTo(6);
    assertThat(samples.get(1).isMeasured(1, 0)).isFalse();
    assertThat(samples.get(1).readings()).isEqualTo(3);
  }

  /** The tie is 5 of the 15 um that are reported together; extruder A feeds 10 of 15 and of 35. */
  @Test
  void aLayerReportedTogetherWithAnotherReachesOnlyItsPart() {
    assertThat(Reach.layer(FILM, "Tie").weights()).containsExactly(5.0 / 15, 0.0);
    assertThat(Reach.extruder(FILM, "A").weights()).containsExactly(10.0 / 15, 10.0 / 35);
    Event dropout = new Step(new Span(0, 1), Reach.layer(FILM, "Tie"), -0.3);
    assertThat(layer(TwoLayers.still(dropout).samples(1), 1)[0])
        .isCloseTo(10 + 5 * 0.7, within(1e-9));
  }

  @Test
  void whatIsNotReachedAndWhatCameBeforeIsUntouched() {
    Event late = new Step(Span.from(30), Reach.layer(FILM, "Skin"), 0.1);
    List<Sample> with = TwoLayers.story(late).samples(40);
    List<Sample> without = TwoLayers.story().samples(40);
    assertThat(with.subList(0, 30)).isEqualTo(without.subList(0, 30));
    for (int i = 30; i < 40; i++) {
      assertThat(with.get(i).thicknessUm(2, 1)).isEqualTo(without.get(i).thicknessUm(2, 1));
      assertThat(with.get(i).thicknessUm(1, 1) / without.get(i).thicknessUm(1, 1))
          .isCloseTo(1 + 0.1 * 10 / 15, within(1e-4)); // readings are rounded to 0.001 um
    }
  }

  @Test
  void twoEventsMultiply() {
    Event one = new Step(Span.from(0), EVERYWHERE, -0.1);
    Event other = new Step(Span.from(0), EVERYWHERE, 0.2);
    assertThat(layer(TwoLayers.still(one, other).samples(1), 1)).containsExactly(16.2);
  }

  @Test
  void anEventThatCannotBeIsRefused() {
    assertThatThrownBy(() -> new Span(3, 3)).hasMessageContaining("no samples");
    assertThatThrownBy(() -> Reach.layer(FILM, "Glue")).hasMessageContaining("no layer");
    assertThatThrownBy(() -> new Drift(Span.from(0), EVERYWHERE, 0.1, -1))
        .hasMessageContaining("cap");
    assertThatThrownBy(() -> new ScreenBlinding(0, EVERYWHERE, 0.1, 10, 0))
        .hasMessageContaining("0.1 of itself in each of 10");
  }

  private static double[] layer(List<Sample> samples, int position) {
    return samples.stream().mapToDouble(sample -> sample.thicknessUm(position, 1)).toArray();
  }

  private static double[] lanes(Event event) {
    Sample sample = TwoLayers.still(event).samples(1).get(0);
    return SeriesOf.layer(sample, 1);
  }
}
