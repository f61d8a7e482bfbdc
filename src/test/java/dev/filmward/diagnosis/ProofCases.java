package dev.filmward.diagnosis;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import dev.filmward.simulate.MassBalanceLine.Condition;
import dev.filmward.simulate.MassBalanceLine.Film;
import dev.filmward.simulate.MassBalanceLine.Trouble;
import dev.filmward.simulate.ProofFilms;
import java.time.Duration;
import java.util.List;
import java.util.Set;

/**
 * What is made to go wrong in the proof, by what it does to outputs, splits, speed, die, melt and
 * probe: nothing here knows a statistic of the diagnosis.
 */
final class ProofCases {
  private static final Duration QUARTER = Duration.ofMinutes(15);
  private static final Film SHRINK = ProofFilms.shrink();
  private static final Film POUCH = ProofFilms.pouch();
  private static final Film LIDDING = ProofFilms.lidding();
  private static final List<Film> ALL = List.of(SHRINK, POUCH, LIDDING);

  private ProofCases() {}

  /** Weak, middle, strong. */
  enum Strength {
    WEAK,
    MIDDLE,
    STRONG
  }

  /** How a trouble looks on a film from a sample on, how strong it is. */
  interface Maker {
    Trouble on(Film film, int from, double strength);
  }

  /**
   * A cause.
   *
   * @param code of the signature that must come first
   * @param unit what the strengths are in
   * @param strengths weak, middle, strong
   * @param since how many samples there are from its beginning on
   * @param hasStart whether a beginning can be asked for
   */
  record Case(
      String domain,
      String code,
      String name,
      List<Film> films,
      Maker maker,
      String unit,
      List<Double> strengths,
      Setting setting) {
    double strength(Strength strength) {
      return strengths.get(strength.ordinal());
    }
  }

  /**
   * What is around a cause.
   *
   * @param before samples in which nothing happens, and up to eleven more
   * @param since samples from the beginning on
   * @param boundaryAfter how many samples after the beginning the boundaries are
   */
  record Setting(
      Duration interval,
      int before,
      int since,
      Set<Boundary.Kind> boundaries,
      int boundaryAfter,
      Start start) {
    static Setting of(int since, Boundary.Kind... kinds) {
      return new Setting(QUARTER, 160, since, Set.of(kinds), 0, Start.ASKED);
    }
  }

  /** Whether the beginning is part of the proof. */
  enum Start {
    ASKED,
    NOT_ASKED
  }

  static List<Case> all() {
    return List.of(
        new Case(
            "P1",
            "all-layers-together",
            "haul-off speed",
            ALL,
            (film, from, s) -> (t, c, r) -> c.speed /= t >= from ? 1 + s / 100 : 1,
            "% of speed",
            List.of(0.75, 1.5, 3.0),
            Setting.of(24)),
        new Case(
            "P2",
            "one-layer-step",
            "output of one extruder",
            ALL,
            (film, from, s) -> {
              Source one = Source.single(film);
              return (t, c, r) -> output(c, one, t >= from ? 1 + s * one.sigma() : 1);
            },
            "sigma",
            List.of(1.5, 3.0, 6.0),
            Setting.of(24)),
        new Case(
            "P3",
            "one-extruder-step",
            "output of an extruder of two layers",
            List.of(SHRINK, LIDDING),
            (film, from, s) -> {
              Source two = Source.several(film);
              return (t, c, r) -> output(c, two, t >= from ? 1 - s * two.sigma() : 1);
            },
            "sigma",
            List.of(1.5, 3.0, 6.0),
            Setting.of(24)),
        new Case(
            "P4",
            "mass-traded",
            "feedblock split of PA and PE",
            List.of(POUCH),
            (film, from, s) -> (t, c, r) -> trade(film, c, t >= from ? s / 100 : 0),
            "% of the thinner layer",
            List.of(3.0, 6.0, 12.0),
            Setting.of(24)),
        new Case(
            "P5",
            "boundary-misplaced",
            "gate of the boundary of PE and PA",
            List.of(POUCH),
            (film, from, s) -> (t, c, r) -> shiftBoundary(film, c, t >= from ? s : 0),
            "% of the thinner layer",
            List.of(3.0, 6.0, 12.0),
            Setting.of(24)),
        new Case(
            "P4=P5",
            "mass-traded",
            "split of PE and tie, of like velocity times density",
            List.of(LIDDING),
            (film, from, s) ->
                (t, c, r) -> {
                  c.split[1] *= 1 - (t >= from ? s / 100 : 0);
                  c.split[0] *= 1 + (t >= from ? s / 100 * 3 * 0.915 / (14 * 0.922) : 0);
                },
            "% of the tie",
            List.of(4.0, 8.0, 16.0),
            Setting.of(24)),
        new Case(
            "P4=P5",
            "boundary-misplaced",
            "gate of the boundary of PE and tie",
            List.of(LIDDING),
            (film, from, s) ->
                (t, c, r) -> {
                  for (int j = 0; t >= from && j < c.lip.length; j++) {
                    c.boundaryNs[1][j] += s / 100 * 3 * 2000 / 1980;
                  }
                },
            "% of the tie",
            List.of(4.0, 8.0, 16.0),
            Setting.of(24)),
        new Case(
            "P5",
            "boundary-jumps",
            "a boundary that jumps in some lanes",
            List.of(POUCH, LIDDING),
            (film, from, s) ->
                (t, c, r) -> {
                  for (int j = 0; t >= from && j < c.lip.length; j++) {
                    jump(film, c, j, r.uniform() < 0.3 ? s * r.normal() : 0);
                  }
                },
            "% of the thinner layer",
            List.of(8.0, 15.0, 30.0),
            Setting.of(24)),
        new Case(
            "P6",
            "slow-decline",
            "screen pack fills up",
            ALL,
            (film, from, s) -> {
              Source one = Source.single(film);
              return (t, c, r) ->
                  output(c, one, t >= from ? 1 - s * one.sigma() * (t - from + 1) / 48 : 1);
            },
            "sigma at the end",
            List.of(5.0, 10.0, 20.0),
            Setting.of(48)),
        new Case(
            "P6",
            "slow-decline",
            "the same, then the screen is changed",
            ALL,
            (film, from, s) -> {
              Source one = Source.single(film);
              return (t, c, r) ->
                  output(
                      c,
                      one,
                      t >= from && t < from + 48 ? 1 - s * one.sigma() * (t - from + 1) / 48 : 1);
            },
            "sigma at the end",
            List.of(5.0, 10.0, 20.0),
            new Setting(QUARTER, 160, 64, Set.of(Boundary.Kind.SCREEN_CHANGE), 48, Start.ASKED)),
        new Case(
            "P7",
            "step-at-resin-lot",
            "a lot of other viscosity",
            ALL,
            (film, from, s) -> {
              Source one = Source.single(film);
              return (t, c, r) -> output(c, one, t >= from ? 1 + s * one.sigma() : 1);
            },
            "sigma",
            List.of(1.5, 3.0, 6.0),
            Setting.of(24, Boundary.Kind.RESIN_LOT)),
        new Case(
            "P8",
            "short-dropout",
            "bridging in a feed throat",
            ALL,
            (film, from, s) -> {
              Source one = Source.single(film);
              return (t, c, r) ->
                  output(c, one, t >= from && t < from + 2 ? 1 - s * one.sigma() : 1);
            },
            "sigma, two samples",
            List.of(6.0, 10.0, 15.0),
            Setting.of(8)),
        new Case(
            "P9",
            "one-layer-swings",
            "refill of a feeder, read each minute",
            ALL,
            (film, from, s) -> {
              Source one = Source.single(film);
              return (t, c, r) ->
                  output(
                      c,
                      one,
                      1 + (t >= from ? s * one.sigma() * Math.sin(2 * Math.PI * t / 8.3) : 0));
            },
            "sigma of amplitude",
            List.of(0.8, 1.5, 3.0),
            new Setting(Duration.ofMinutes(1), 160, 100, Set.of(), 0, Start.ASKED)),
        new Case(
            "P11",
            "profile-of-all-layers",
            "a die bolt",
            ALL,
            (film, from, s) ->
                (t, c, r) -> {
                  for (int j = 0; t >= from && j < c.lip.length; j++) {
                    c.lip[j] *= 1 + s / 100 * (j == 1 ? 1 : -1.0 / (c.lip.length - 1));
                  }
                },
            "% in one lane",
            List.of(1.5, 3.0, 6.0),
            Setting.of(24)),
        new Case(
            "P12",
            "profile-of-one-layer",
            "a plugged port of one layer",
            ALL,
            (film, from, s) -> {
              int layer = Source.single(film).layer();
              return (t, c, r) -> {
                int lanes = c.lip.length;
                for (int j = 0; t >= from && j < lanes; j++) {
                  c.flow[layer][j] *= 1 - s / 100 * (j == 1 ? 1 : -1.0 / (lanes - 1));
                }
              };
            },
            "% in one lane",
            List.of(3.0, 6.0, 12.0),
            Setting.of(24)),
        new Case(
            "P13",
            "edge-against-centre",
            "encapsulation",
            List.of(POUCH, LIDDING),
            (film, from, s) -> (t, c, r) -> encapsulate(film, c, t >= from ? s / 100 : 0),
            "% at edge, thinner layer",
            List.of(2.0, 4.0, 8.0),
            Setting.of(24)),
        new Case(
            "P16",
            "layer-scatters",
            "melt fracture in one layer",
            ALL,
            (film, from, s) -> {
              int layer = Source.single(film).layer();
              return (t, c, r) -> c.residual[layer] *= t >= from ? s : 1;
            },
            "times the scatter",
            List.of(1.5, 2.0, 3.0),
            Setting.of(24)),
        new Case(
            "P17",
            "core-since-start",
            "regrind builds up",
            List.of(SHRINK, POUCH),
            (film, from, s) -> {
              Source core = Source.core(film);
              return (t, c, r) ->
                  output(
                      c,
                      core,
                      1 + (t >= from ? s * core.sigma() * (1 - Math.exp(-(t - from) / 16.0)) : 0));
            },
            "sigma at last",
            List.of(3.0, 6.0, 12.0),
            Setting.of(60, Boundary.Kind.RESTART)),
        new Case(
            "P18",
            "skins-opposed",
            "split of an extruder between two skins",
            List.of(SHRINK),
            (film, from, s) ->
                (t, c, r) -> {
                  c.split[0] *= t >= from ? 1 + s / 100 : 1;
                  c.split[2] *= t >= from ? 1 - s / 100 : 1;
                },
            "% of each skin",
            List.of(1.0, 2.0, 4.0),
            Setting.of(24)),
        new Case(
            "P19",
            "temperature-wave",
            "gauge warm by day",
            ALL,
            (film, from, s) -> (t, c, r) -> warm(film, c, s * Math.sin(2 * Math.PI * t / 96)),
            "K either way",
            List.of(1.0, 2.0, 4.0),
            new Setting(QUARTER, 160, 128, Set.of(), 0, Start.NOT_ASKED)),
        new Case(
            "M4",
            "couplant-counted",
            "couplant under the probe",
            ALL,
            (film, from, s) ->
                (t, c, r) -> {
                  for (int j = 0; t >= from && j < c.lip.length; j++) {
                    c.offsetUm[j] += r.uniform() < 0.2 ? s * r.uniform() : 0;
                  }
                },
            "um at most, each fifth",
            List.of(3.0, 6.0, 12.0),
            Setting.of(24)),
        new Case(
            "M5",
            "zero-offset",
            "zero offset after a calibration",
            List.of(SHRINK),
            (film, from, s) ->
                (t, c, r) -> {
                  for (int j = 0; t >= from && j < c.lip.length; j++) {
                    c.offsetUm[j] += s;
                  }
                },
            "um",
            List.of(0.3, 0.6, 1.2),
            Setting.of(24, Boundary.Kind.CALIBRATION)),
        new Case(
            "M6",
            "velocity-changed",
            "velocity of one resin after a calibration",
            ALL,
            (film, from, s) ->
                (t, c, r) -> {
                  String resin = film.structure().layers().get(core(film)).resin().orElseThrow();
                  for (int i = 0; t >= from && i < c.velocity.length; i++) {
                    Layer layer = film.structure().layers().get(i);
                    c.velocity[i] *= layer.resin().orElseThrow().equals(resin) ? 1 + s / 100 : 1;
                  }
                },
            "% of velocity",
            List.of(1.5, 3.0, 6.0),
            Setting.of(24, Boundary.Kind.CALIBRATION)),
        new Case(
            "M13",
            "one-odd-sample",
            "a stretched sample",
            ALL,
            (film, from, s) -> (t, c, r) -> c.speed *= t == from ? 1 + s / 100 : 1,
            "% thinner",
            List.of(5.0, 10.0, 20.0),
            Setting.of(8)));
  }

  /**
   * An extruder and the layers that it feeds.
   *
   * @param sigma of the means of samples of a reported layer that it feeds, as a fraction
   */
  private record Source(String extruder, int layer, double sigma) {
    static Source single(Film film) {
      int layer = film == LIDDING ? 3 : film == POUCH ? 2 : 1;
      return of(film, layer);
    }

    static Source core(Film film) {
      return of(film, film == POUCH ? 2 : 1);
    }

    static Source several(Film film) {
      return of(film, film == LIDDING ? 1 : 0);
    }

    /** Variances of outputs, splits, speed, places and readings, as the line has them. */
    private static Source of(Film film, int layer) {
      double reading = film.residual().get(layer);
      double variance =
          0.005 * 0.005
              + 0.003 * 0.003
              + 0.0025 * 0.0025
              + (0.008 * 0.008 + reading * reading) / film.lanes();
      return new Source(
          film.structure().layers().get(layer).extruder().orElseThrow(),
          layer,
          Math.sqrt(variance));
    }
  }

  private static int core(Film film) {
    return film == SHRINK ? 1 : 2;
  }

  private static void output(Condition condition, Source source, double factor) {
    condition.output.merge(source.extruder(), factor, (a, b) -> a * b);
  }

  /** The seal gains what the core loses, in mass. */
  private static void trade(Film film, Condition c, double part) {
    int thin = 2;
    int thick = 4;
    c.split[thin] *= 1 - part;
    c.split[thick] *= 1 + part * mass(film.structure(), thin) / mass(film.structure(), thick);
  }

  private static double mass(Structure structure, int layer) {
    Layer is = structure.layers().get(layer);
    return is.individual().target().orElseThrow() * is.densityGcm3().orElseThrow();
  }

  /** Of the boundary between two reported layers of unlike velocity, by time. */
  private static void shiftBoundary(Film film, Condition c, double percent) {
    for (int j = 0; j < c.lip.length; j++) {
      jump(film, c, j, percent);
    }
  }

  private static void jump(Film film, Condition c, int lane, double percent) {
    Structure structure = film.structure();
    int below = film == LIDDING ? 3 : 1;
    ReportedLayer thin = structure.reported().get(film == LIDDING ? 2 : 1);
    Layer is = thin.members().get(0);
    double um = is.individual().target().orElseThrow();
    int boundary = film == LIDDING ? below : 3;
    c.boundaryNs[boundary][lane] += percent / 100 * um * 2000 / is.velocityMps().orElseThrow();
  }

  /** A neighbour of the core moves to the edges; what it takes there the core lacks, in mass. */
  private static void encapsulate(Film film, Condition c, double part) {
    int one = film == LIDDING ? 2 : 2;
    int other = film == LIDDING ? 3 : 4;
    double ratio = mass(film.structure(), one) / mass(film.structure(), other);
    double thinner = ratio < 1 ? part : part / ratio;
    int lanes = c.lip.length;
    double mean = 0;
    for (int j = 0; j < lanes; j++) {
      double place = 2.0 * j / (lanes - 1) - 1;
      mean += place * place / lanes;
    }
    for (int j = 0; j < lanes; j++) {
      double place = 2.0 * j / (lanes - 1) - 1;
      double bent = (place * place - mean) / (1 - mean);
      c.flow[one][j] *= 1 + thinner * bent;
      c.flow[other][j] *= 1 - thinner * ratio * bent;
    }
  }

  /** With a velocity set once a warm film reads thicker: polyethylene 0.4 %/K, others 0.15 %/K. */
  private static void warm(Film film, Condition c, double kelvin) {
    for (int i = 0; i < c.velocity.length; i++) {
      String resin = film.structure().layers().get(i).resin().orElseThrow();
      boolean isPolar = resin.startsWith("PA") || resin.startsWith("EVOH");
      c.velocity[i] *= 1 + kelvin * (isPolar ? 0.0015 : 0.004);
    }
  }
}
