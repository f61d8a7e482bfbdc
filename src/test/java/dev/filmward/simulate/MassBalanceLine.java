package dev.filmward.simulate;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * A line that makes film by its mass balance, {@code t = Q / (rho W v)} in each layer, and a gauge
 * that hears where boundaries lie: nothing here knows how a diagnosis is made. Faults act on what
 * they act on in a plant: outputs, splits, width, speed, die, distribution, melt, probe.
 *
 * <p>Sizes of the noise (common practice, no source): outputs vary by 0.5 % from sample to sample,
 * speed and width together by 0.25 %, splits by 0.3 %, all with first-order memory; lanes differ by
 * 1.5 % for good in all layers and by 1 % in each; a place varies by 0.8 % in all layers at once.
 */
public final class MassBalanceLine {
  private static final double OUTPUT = 0.005;
  private static final double SPEED = 0.0025;
  private static final double SPLIT = 0.003;
  private static final double DIE = 0.015;
  private static final double DISTRIBUTION = 0.01;
  private static final double PLACE = 0.008;
  private static final double ROUNDED_UM = 0.05;

  private final Film film;
  private final Pace pace;
  private final Noise noise;
  private final double memory;
  private final int[] lanes;
  private final double[] die;
  private final double[][] distribution;
  private final Map<String, Double> outputs = new TreeMap<>();
  private final double[] splits;
  private double speed;
  private int index;

  /**
   * @param residual standard deviation of a single reading of each layer as extruded, a fraction
   * @param lanes how many places across the web are read
   */
  public record Film(Structure structure, List<Double> residual, int lanes) {}

  /**
   * @param memory correlation of what varies with the sample before
   * @param samplesPerRoll how many samples a roll has
   */
  public record Pace(Duration interval, double memory, int samplesPerRoll) {}

  /** What is otherwise than usual at a sample. Nothing is, to begin with. */
  public static final class Condition {
    public double width = 1;
    public double speed = 1;
    public final Map<String, Double> output = new TreeMap<>();
    public final double[] split;
    public final double[] velocity;
    public final double[] residual;
    public final double[][] flow;
    public final double[] lip;
    public final double[] offsetUm;
    public final double[][] boundaryNs;

    Condition(int layers, int lanes) {
      split = ones(layers);
      velocity = ones(layers);
      residual = ones(layers);
      flow = new double[layers][];
      for (int i = 0; i < layers; i++) {
        flow[i] = ones(lanes);
      }
      lip = ones(lanes);
      offsetUm = new double[lanes];
      boundaryNs = new double[layers + 1][lanes];
    }

    private static double[] ones(int count) {
      return IntStream.range(0, count).mapToDouble(i -> 1).toArray();
    }
  }

  /** Something that goes wrong on the line or in the gauge. */
  public interface Trouble {
    /** Changes the condition at a sample counted from 0; {@code chance} is for what is random. */
    void act(int sample, Condition condition, Chance chance);
  }

  /** Random numbers for a trouble. */
  public interface Chance {
    double normal();

    double uniform();
  }

  public MassBalanceLine(Film film, Pace pace, long seed) {
    this.film = film;
    this.pace = pace;
    this.noise = new Noise(seed * 7919 + 17);
    this.memory = pace.memory();
    this.lanes = IntStream.rangeClosed(1, film.lanes()).toArray();
    int layers = film.structure().layers().size();
    this.die = profile(DIE);
    this.distribution = new double[layers][];
    for (int i = 0; i < layers; i++) {
      distribution[i] = profile(DISTRIBUTION);
    }
    this.splits = new double[layers];
    for (Layer layer : film.structure().layers()) {
      outputs.put(layer.extruder().orElseThrow(), 0.0);
    }
    for (int i = 0; i < 30; i++) {
      move();
    }
  }

  public static Instant at(Pace pace, int sample) {
    return Instant.parse("2026-11-16T05:00:00Z").plus(pace.interval().multipliedBy(sample));
  }

  private double[] profile(double size) {
    double[] profile = new double[lanes.length];
    double sum = 0;
    for (int j = 0; j < profile.length; j++) {
      profile[j] = size * noise.normal();
      sum += profile[j];
    }
    for (int j = 0; j < profile.length; j++) {
      profile[j] = 1 + profile[j] - sum / profile.length;
    }
    return profile;
  }

  private void move() {
    double news = Math.sqrt(1 - memory * memory);
    outputs.replaceAll((name, now) -> memory * now + news * OUTPUT * noise.normal());
    for (int i = 0; i < splits.length; i++) {
      splits[i] = memory * splits[i] + news * SPLIT * noise.normal();
    }
    speed = memory * speed + news * SPEED * noise.normal();
  }

  /** The next samples, with what goes wrong in them. */
  public List<Sample> samples(int count, Trouble trouble) {
    List<Sample> samples = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      samples.add(next(trouble));
    }
    return samples;
  }

  private Sample next(Trouble trouble) {
    move();
    Condition now = new Condition(splits.length, lanes.length);
    trouble.act(index, now, new Drawn(noise));
    double[][] um = new double[splits.length][lanes.length];
    for (int j = 0; j < lanes.length; j++) {
      double[] made = made(now, j);
      for (int i = 0; i < made.length; i++) {
        um[i][j] = made[i];
      }
    }
    Sample sample =
        new Sample(
            new SampleKey(
                "Blown 1",
                film.structure().code(),
                "R" + (index / pace.samplesPerRoll() + 1),
                "S" + (index + 1)),
            at(pace, index),
            lanes,
            read(um, now));
    index++;
    return sample;
  }

  /** Thickness of each layer in a lane, from outputs, splits, width, speed and the die. */
  private double[] made(Condition now, int lane) {
    List<Layer> layers = film.structure().layers();
    double place = 1 + PLACE * noise.normal();
    double[] um = new double[layers.size()];
    double usualMass = 0;
    double mass = 0;
    for (int i = 0; i < um.length; i++) {
      Layer layer = layers.get(i);
      String extruder = layer.extruder().orElseThrow();
      double kgPerHour =
          layer.individual().target().orElseThrow()
              * layer.densityGcm3().orElseThrow()
              * (1 + outputs.get(extruder))
              * now.output.getOrDefault(extruder, 1.0)
              * (1 + splits[i])
              * now.split[i];
      double alone = kgPerHour * distribution[i][lane];
      double flow = alone * now.flow[i][lane];
      usualMass += alone;
      mass += flow;
      double speedNow = (1 + speed) * now.speed * now.width;
      um[i] = flow / layer.densityGcm3().orElseThrow() / speedNow;
      um[i] *= die[lane] * now.lip[lane] * place;
      um[i] *= 1 + film.residual().get(i) * now.residual[i] * noise.normal();
    }
    // the lip decides how much comes out of a lane: what one layer lacks there, all fill up
    for (int i = 0; i < um.length; i++) {
      um[i] *= usualMass / mass;
    }
    return um;
  }

  /** What the gauge makes of it: boundaries heard in time, then grouped and rounded. */
  private double[][] read(double[][] um, Condition now) {
    List<Layer> layers = film.structure().layers();
    List<ReportedLayer> reported = film.structure().reported();
    double[][] read = new double[reported.size()][lanes.length];
    for (int j = 0; j < lanes.length; j++) {
      int i = 0;
      for (int k = 0; k < read.length; k++) {
        double sum = 0;
        int first = i;
        double velocity = layers.get(i).velocityMps().orElseThrow();
        for (Layer ignored : reported.get(k).members()) {
          sum += um[i][j] * now.velocity[i];
          i++;
        }
        double shiftNs = now.boundaryNs[i][j] - now.boundaryNs[first][j];
        sum += velocity * shiftNs / 2000 + (k == 0 ? now.offsetUm[j] : 0);
        read[k][j] = Math.max(1, Math.rint(sum / ROUNDED_UM)) * ROUNDED_UM;
        read[k][j] = noise.uniform() < 0.002 ? Double.NaN : read[k][j];
      }
    }
    return read;
  }

  private record Drawn(Noise noise) implements Chance {
    @Override
    public double normal() {
      return noise.normal();
    }

    @Override
    public double uniform() {
      return noise.uniform();
    }
  }
}
