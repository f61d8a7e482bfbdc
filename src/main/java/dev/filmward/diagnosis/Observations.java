package dev.filmward.diagnosis;

import dev.filmward.diagnosis.Observation.Shape;
import dev.filmward.film.Sample;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Puts what looks found into words. Mutable, for one thread. */
final class Observations {
  private final FilmSeries series;
  private final Findings findings;

  Observations(FilmSeries series, Findings findings) {
    this.series = series;
    this.findings = findings;
  }

  private String names(List<Integer> positions) {
    if (positions.isEmpty() || positions.size() == series.layers) {
      return "all layers";
    }
    return positions.stream()
        .map(position -> series.structure.reported().get(position - 1).name())
        .collect(Collectors.joining(" and "));
  }

  private double value(Statistic statistic) {
    return findings.valueOr(statistic, 0);
  }

  private List<Integer> positions(Statistic statistic) {
    return findings.find(statistic).map(Finding::positions).orElse(List.of());
  }

  /** A change that certainly began before a sample and after the one before it. */
  private static Since at(List<Sample> samples, int from) {
    Instant before = samples.get(Math.max(0, from - 1)).takenAt();
    Instant at = samples.get(from).takenAt();
    return new Since(at, from == 0 ? Optional.empty() : Optional.of(before), at);
  }

  void level(LevelChange change, Since since, List<Boundary> boundaries) {
    List<LayerMove> moves = moves(change);
    Shape shape = change.course.isStep() ? Shape.STEP : Shape.DRIFT;
    List<Integer> positions = change.clearest.positions();
    String words =
        Sentences.upper(names(positions))
            + (change.course.isStep() ? " stepped by " : " drifted by ")
            + Numbers.signed(value(Statistic.MOVED_PERCENT))
            + " %"
            + (change.clearest.family() == Direction.Family.TRADE_MASS
                    || change.clearest.family() == Direction.Family.TRADE_TIME_OF_FLIGHT
                    || change.clearest.family() == Direction.Family.SKINS
                ? ", against each other"
                : "")
            + "; total "
            + Numbers.signed(value(Statistic.TOTAL_PERCENT))
            + " %. "
            + Numbers.of(value(Statistic.LEVEL_Z))
            + " standard errors clear.";
    findings.observed(
        new Observation(shape, positions, Optional.of(since), moves, List.of(), boundaries, words));
  }

  private List<LayerMove> moves(LevelChange change) {
    double totalUm = series.totalUm();
    double[] worth = series.usualUm;
    double movedUm = LevelScan.dot(worth, change.moves);
    List<LayerMove> moves = new ArrayList<>();
    for (int i = 0; i < series.layers; i++) {
      double um = worth[i] * change.moves[i];
      double share = (worth[i] + um) / (totalUm + movedUm) - worth[i] / totalUm;
      moves.add(new LayerMove(i + 1, 100 * change.moves[i], um, 100 * share, change.z(i)));
    }
    moves.add(new LayerMove(0, 100 * movedUm / totalUm, movedUm, 0, change.z(worth)));
    return moves;
  }

  void disturbance(ShortLook.Disturbance off) {
    List<Integer> positions = positions(Statistic.SHORT_Z);
    int samples = off.end() - off.from();
    findings.observed(
        new Observation(
            Shape.SHORT,
            positions,
            Optional.of(at(series.samples, off.from())),
            List.of(),
            List.of(),
            List.of(),
            Sentences.upper(names(positions))
                + " were off by up to "
                + Numbers.signed(value(Statistic.SHORT_PERCENT))
                + " % for "
                + (samples == 1 ? "one sample" : samples + " samples")
                + ", then back as before."));
  }

  void daily() {
    if (value(Statistic.DAILY_Z) < DailyLook.CLEAR) {
      return;
    }
    List<Integer> positions = positions(Statistic.DAILY_Z);
    findings.observed(
        new Observation(
            Shape.DAILY,
            positions,
            Optional.empty(),
            List.of(),
            List.of(),
            List.of(),
            Sentences.upper(names(positions))
                + " swing with the day; "
                + Numbers.of(value(Statistic.DAILY_Z))
                + " standard errors clear."));
  }

  void swing(List<Sample> samples, PeriodLook.Swing swing) {
    List<Integer> positions = positions(Statistic.PERIODIC_FALSE_ALARM);
    findings.observed(
        new Observation(
            Shape.PERIODIC,
            positions,
            Optional.of(at(samples, swing.from())),
            List.of(),
            List.of(),
            List.of(),
            Sentences.upper(names(positions))
                + " swing by "
                + Numbers.of(value(Statistic.PERIODIC_PERCENT))
                + " % either way each "
                + Numbers.of(value(Statistic.PERIOD_MINUTES))
                + " minutes."));
  }

  void profile(List<Sample> samples, LanesLook.Place place) {
    boolean common =
        value(Statistic.LANES_COMMON_EXPLAINED) >= value(Statistic.LANES_ONE_LAYER_EXPLAINED);
    Statistic about =
        common ? Statistic.LANES_COMMON_EXPLAINED : Statistic.LANES_ONE_LAYER_EXPLAINED;
    List<Integer> positions = positions(about);
    List<Integer> lanes = findings.find(about).map(Finding::lanes).orElse(List.of());
    findings.observed(
        new Observation(
            Shape.PROFILE,
            positions,
            Optional.of(at(samples, place.from())),
            List.of(),
            lanes,
            List.of(),
            "The profile across the web changed in "
                + names(positions)
                + (lanes.isEmpty() ? "" : ", most in lane " + joined(lanes))
                + "; "
                + Numbers.of(place.z())
                + " standard errors clear."));
  }

  private static String joined(List<Integer> lanes) {
    return lanes.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }

  void scatter(List<Sample> samples, ScatterLook.Rise rise) {
    List<Integer> positions = positions(Statistic.SCATTER_Z);
    findings.observed(
        new Observation(
            Shape.SCATTER,
            positions,
            Optional.of(at(samples, rise.from())),
            List.of(),
            List.of(),
            List.of(),
            "Readings of "
                + names(positions)
                + " scatter "
                + Numbers.of(value(Statistic.SCATTER_RATIO))
                + " times as much as before."));
  }
}
