package dev.filmward.simulate;

import dev.filmward.film.Sample;
import java.util.stream.IntStream;

/**
 * Reads an endless film, one sample after the other, as a story tells it.
 *
 * <p>A reading is the layer's mean times (1 + lane + level) times the events' factors times (1 +
 * residual + place), where lane is steady, level is a first-order autoregression from sample to
 * sample, residual is of the reading alone and place is shared by all layers of one lane of one
 * sample; it is then rounded to the gauge's resolution or, by chance, not measured. Whether started
 * at a later sample or run up to it, a gauge gives the same. One owner; not thread safe.
 */
public final class SimulatedGauge {
  private final Story story;
  private final FilmModel film;
  private final int[] lanes;
  private final double[] levels;
  private int sample;

  SimulatedGauge(Story story) {
    this.story = story;
    this.film = story.film();
    this.lanes = IntStream.rangeClosed(1, film.laneCount()).toArray();
    this.levels = new double[film.layers().size()];
  }

  /** A gauge whose next sample has an index from 0; takes time in proportion to the index. */
  static SimulatedGauge startingAt(Story story, int sample) {
    SimulatedGauge gauge = new SimulatedGauge(story);
    while (gauge.sample < sample) {
      gauge.moveLevels();
      gauge.sample++;
    }
    return gauge;
  }

  /** The sample that the next call gives, counted from 0 at the start of the story. */
  public int nextIndex() {
    return sample;
  }

  public Sample next() {
    moveLevels();
    Noise noise = Noise.ofReadings(story.seed(), sample);
    double[][] um = new double[levels.length][lanes.length];
    for (int lane = 1; lane <= lanes.length; lane++) {
      double place = film.stability().place() * noise.normal();
      for (int position = 1; position <= levels.length; position++) {
        um[position - 1][lane - 1] = reading(noise, position, lane, place);
      }
    }
    Sample taken =
        new Sample(
            story.schedule().key(film.structure().code(), sample),
            story.schedule().takenAt(sample),
            lanes,
            um);
    sample++;
    return taken;
  }

  private double reading(Noise noise, int position, int lane, double place) {
    LayerModel layer = film.layers().get(position - 1);
    double steady = layer.meanUm() * (1 + layer.lanes().get(lane - 1) + levels[position - 1]);
    double residual = layer.residual() * noise.normal();
    boolean measured = noise.uniform() >= story.missing(sample, position, lane);
    double um = steady * story.factor(sample, position, lane) * (1 + residual + place);
    return measured ? film.rounded(um) : Double.NaN;
  }

  private void moveLevels() {
    Noise noise = Noise.betweenSamples(story.seed(), sample);
    double memory = sample == 0 ? 0 : film.stability().memory();
    double news = Math.sqrt(1 - memory * memory);
    for (int i = 0; i < levels.length; i++) {
      levels[i] = memory * levels[i] + news * film.layers().get(i).between() * noise.normal();
    }
  }
}
