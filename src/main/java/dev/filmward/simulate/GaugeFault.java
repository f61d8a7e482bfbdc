package dev.filmward.simulate;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import java.util.Arrays;

/**
 * A way in which a gauge misreads a film: what it exports of a sample, in times of flight. The same
 * seed gives the same. Immutable.
 */
@FunctionalInterface
public interface GaugeFault {
  /** Speed of sound in water at 20 °C, m/s, as remembered from handbooks. */
  double WATER_MPS = 1483;

  /** A time of flight in ns is this times um over m/s. */
  double NS = 2000;

  /**
   * Reads a film at one lane.
   *
   * @param um the film's thickness by layer, at one lane
   * @param mps the velocities set in the gauge
   * @param noise what differs from lane to lane
   * @return what is exported; NaN where blank
   */
  double[] lane(double[] um, double[] mps, Lot noise);

  /** What chance gives. */
  final class Lot {
    private final Noise noise;
    private int lane;

    private Lot(Noise noise) {
      this.noise = noise;
    }

    double normal() {
      return noise.normal();
    }

    double uniform() {
      return noise.uniform();
    }
  }

  /** A misread sample: every lane by itself. */
  default Sample of(Sample film, Structure structure, long seed) {
    double[] mps = structure.reported().stream().mapToDouble(GaugeFault::velocity).toArray();
    Lot lot = new Lot(new Noise(seed));
    double[][] um = new double[film.layers()][film.laneCount()];
    int[] lanes = new int[film.laneCount()];
    for (int lane = 0; lane < lanes.length; lane++) {
      lanes[lane] = film.lane(lane);
      double[] column = new double[film.layers()];
      for (int i = 0; i < column.length; i++) {
        column[i] = film.isMeasured(i + 1, lane) ? film.thicknessUm(i + 1, lane) : Double.NaN;
      }
      lot.lane = lane;
      double[] read = lane(column, mps, lot);
      for (int i = 0; i < column.length; i++) {
        um[i][lane] = Math.rint(100 * read[i]) / 100;
      }
    }
    return new Sample(film.key(), film.takenAt(), lanes, um);
  }

  private static double velocity(ReportedLayer layer) {
    double thickness = 0;
    double time = 0;
    for (Layer member : layer.members()) {
      double um = member.individual().target().orElse(1);
      thickness += um;
      time += um / member.velocityMps().orElse(2000);
    }
    return thickness / time;
  }

  /** Only some lanes are misread. */
  default GaugeFault inShareOfLanes(double share) {
    return (um, mps, lot) -> lot.uniform() < share ? lane(um, mps, lot) : um.clone();
  }

  /** The second lane is misread, the fourth, and so on. */
  default GaugeFault inEveryOtherLane() {
    return (um, mps, lot) -> lot.lane % 2 == 1 ? lane(um, mps, lot) : um.clone();
  }

  /** The boundary behind a layer is not found. */
  static GaugeFault boundaryMissed(int after) {
    return (um, mps, lot) -> {
      double[] ns = ns(um, mps);
      double[] heard = new double[ns.length];
      Arrays.fill(heard, Double.NaN);
      for (int i = 0; i < ns.length; i++) {
        int place = i < after ? i : i - 1;
        heard[place] = i == after ? heard[place] + ns[i] : ns[i];
      }
      return um(heard, mps);
    };
  }

  /** An echo counts again after some ns, in a layer. */
  static GaugeFault doubleTrigger(int in, double afterNs) {
    return (um, mps, lot) -> {
      double[] ns = ns(um, mps);
      double[] heard = ns.clone();
      double thin = afterNs * (1 + 0.05 * lot.normal());
      heard[in - 1] = thin;
      heard[in] = ns[in - 1] - thin;
      System.arraycopy(ns, in, heard, in + 1, ns.length - in - 1);
      return um(heard, mps);
    };
  }

  /**
   * A film of couplant lies on the first layer: on average so thick, half as much or double as it
   * happens.
   */
  static GaugeFault couplant(double meanUm) {
    return (um, mps, lot) -> {
      double[] ns = ns(um, mps);
      double film = meanUm * Math.exp(0.5 * lot.normal());
      ns[0] += NS * film / WATER_MPS;
      return um(ns, mps);
    };
  }

  /** The boundary behind a layer is read too early or too late. */
  static GaugeFault boundaryMisplaced(int after, double sdNs) {
    return (um, mps, lot) -> {
      double[] ns = ns(um, mps);
      double least = -0.8 * ns[after - 1];
      double most = 0.8 * ns[after];
      double late = Math.max(least, Math.min(most, sdNs * lot.normal()));
      ns[after - 1] += late;
      ns[after] -= late;
      return um(ns, mps);
    };
  }

  /** The echo behind a layer is taken a half or a whole wave too late. */
  static GaugeFault cycleSkip(int layer, double mhz, double halves) {
    return (um, mps, lot) -> {
      double[] ns = ns(um, mps);
      ns[layer - 1] += halves * 500 / mhz;
      return um(ns, mps);
    };
  }

  static GaugeFault upsideDown() {
    return (um, mps, lot) -> {
      double[] ns = ns(um, mps);
      double[] heard = new double[ns.length];
      for (int i = 0; i < ns.length; i++) {
        heard[i] = ns[ns.length - 1 - i];
      }
      return um(heard, mps);
    };
  }

  /** The inner faces of a tube lie on each other and sound as one layer. */
  static GaugeFault twoWalls() {
    return (um, mps, lot) -> {
      double[] heard = um.clone();
      heard[heard.length - 1] *= 2;
      return heard;
    };
  }

  static GaugeFault times(double factor) {
    return (um, mps, lot) -> Arrays.stream(um).map(each -> factor * each).toArray();
  }

  /** A layer reads the same in all lanes: blank, zero or the range end. */
  static GaugeFault reads(int layer, double value) {
    return (um, mps, lot) -> {
      double[] heard = um.clone();
      heard[layer - 1] = value;
      return heard;
    };
  }

  /** Nothing is read at all. */
  static GaugeFault nothing() {
    return (um, mps, lot) -> {
      double[] heard = new double[um.length];
      Arrays.fill(heard, Double.NaN);
      return heard;
    };
  }

  private static double[] ns(double[] um, double[] mps) {
    double[] ns = new double[um.length];
    for (int i = 0; i < ns.length; i++) {
      ns[i] = NS * um[i] / mps[i];
    }
    return ns;
  }

  private static double[] um(double[] ns, double[] mps) {
    double[] um = new double[ns.length];
    for (int i = 0; i < um.length; i++) {
      um[i] = ns[i] * mps[i] / NS;
    }
    return um;
  }
}
