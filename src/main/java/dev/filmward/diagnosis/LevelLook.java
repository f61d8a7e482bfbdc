package dev.filmward.diagnosis;

import dev.filmward.diagnosis.Direction.Family;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Role;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/** Looks for a change of level, and notes how it runs and which layers make it. */
final class LevelLook {
  /** In-control weeks have none so clear; see {@code DiagnosisProofTest}. */
  static final double CLEAR = 5;

  private static final double LAYER_CLEAR = 3.5;

  private final FilmSeries series;
  private final Directions directions;
  private final double[] minutes;
  private final int last;
  private final int[] screens;
  private final ToDoubleFunction<List<Integer>> blur;

  /**
   * @param minutes of the samples that are looked at
   * @param last index among them of the latest that a change may begin with
   * @param screens indices of the first samples after screen changes
   * @param blur how much clearer a change of some layers must be
   */
  LevelLook(
      FilmSeries series,
      double[] minutes,
      int last,
      int[] screens,
      ToDoubleFunction<List<Integer>> blur) {
    this.blur = blur;
    this.series = series;
    this.directions = new Directions(series.structure, series.usualUm);
    this.minutes = minutes;
    this.last = last;
    this.screens = screens;
  }

  Optional<LevelChange> look(double[][] level, Findings findings) {
    LevelScan scan = new LevelScan(level, minutes, last, directions.all());
    if (!scan.isLongEnough()) {
      return Optional.empty();
    }
    LevelScan.Found found = scan.clearest();
    double z = Math.sqrt(found.gain()) / blur.applyAsDouble(found.direction().positions());
    findings.put(Statistic.LEVEL_Z, z, found.direction().positions());
    if (z < CLEAR) {
      return Optional.empty();
    }
    CourseChoice choice = new CourseChoice(projected(level, found), minutes, last, screens);
    Course course = choice.best();
    Whitened.Fit fit = new Whitened(level, minutes, found.noise().phi).fit(course);
    LevelChange change = new LevelChange(found, course, fit, choice);
    note(findings, change);
    return Optional.of(change);
  }

  /**
   * The one series in which a direction is seen most clearly, in standard deviations of its news.
   */
  private Whitened projected(double[][] level, LevelScan.Found found) {
    return new Whitened(
        column(series(level, found.direction(), found.noise())), minutes, found.noise().phi);
  }

  static double[] series(double[][] level, Direction direction, UsualNoise noise) {
    double[] weighed = noise.weighed(direction.moves());
    double size = Math.sqrt(LevelScan.dot(weighed, direction.moves()));
    double[] values = new double[level.length];
    for (int t = 0; t < values.length; t++) {
      values[t] = LevelScan.dot(weighed, level[t]) / size;
    }
    return values;
  }

  private static double[][] column(double[] values) {
    double[][] column = new double[values.length][1];
    for (int t = 0; t < values.length; t++) {
      column[t][0] = values[t];
    }
    return column;
  }

  private void note(Findings findings, LevelChange change) {
    int layers = series.layers;
    findings.put(Statistic.SAMPLES_SINCE, minutes.length - change.course.from());
    List<Integer> moved =
        IntStream.range(0, layers)
            .filter(i -> Math.abs(change.z(i)) >= LAYER_CLEAR)
            .mapToObj(i -> i + 1)
            .toList();
    findings.put(Statistic.LAYERS_MOVED, (double) moved.size() / layers, moved);
    explained(findings, change, Family.COMMON, Statistic.COMMON_EXPLAINED);
    explained(findings, change, Family.ONE_LAYER, Statistic.ONE_LAYER_EXPLAINED);
    explained(findings, change, Family.EXTRUDER, Statistic.EXTRUDER_EXPLAINED);
    explained(findings, change, Family.SKINS, Statistic.SKINS_OPPOSED_EXPLAINED);
    explained(findings, change, directions.sources(), Statistic.ONE_SOURCE_EXPLAINED);
    explained(findings, change, directions.resins(), Statistic.ONE_RESIN_EXPLAINED);
    directions.all().stream()
        .filter(way -> way.family() == Family.ONE_LAYER && way.positions().equals(List.of(1)))
        .forEach(
            way ->
                findings.put(
                    Statistic.FIRST_LAYER_EXPLAINED, change.explained(way), way.positions()));
    TurnedOver.note(findings, series.usualUm, change.moves);
    noteTrade(findings, change);
    noteSums(findings, change);
    noteCourse(findings, change);
  }

  private void explained(
      Findings findings, LevelChange change, Family family, Statistic statistic) {
    explained(
        findings,
        change,
        directions.all().stream().filter(way -> way.family() == family).toList(),
        statistic);
  }

  private static void explained(
      Findings findings, LevelChange change, List<Direction> ways, Statistic statistic) {
    ways.stream()
        .min(Comparator.comparingDouble(change::misfit))
        .ifPresent(way -> findings.put(statistic, change.explained(way), way.positions()));
  }

  private void noteTrade(Findings findings, LevelChange change) {
    Optional<Direction> best =
        directions.all().stream()
            .filter(
                way ->
                    way.family() == Family.TRADE_MASS
                        || way.family() == Family.TRADE_TIME_OF_FLIGHT)
            .min(Comparator.comparingDouble(change::misfit));
    if (best.isEmpty()) {
      return;
    }
    List<Integer> pair = best.get().positions();
    findings.put(Statistic.TRADE_EXPLAINED, change.explained(best.get()), pair);
    putIfFinite(findings, Statistic.TRADE_MASS_Z, Math.abs(change.z(sum(pair, mass()))));
    putIfFinite(findings, Statistic.TRADE_TIME_OF_FLIGHT_Z, Math.abs(change.z(sum(pair, time()))));
    int apart = Integer.MAX_VALUE;
    for (int j : pair) {
      for (int k : pair) {
        boolean opposed = best.get().moves()[j - 1] * best.get().moves()[k - 1] < 0;
        apart = opposed ? Math.min(apart, Math.abs(j - k)) : apart;
      }
    }
    findings.put(Statistic.TRADE_APART, apart, pair);
  }

  private static void putIfFinite(Findings findings, Statistic statistic, double value) {
    if (Double.isFinite(value)) {
      findings.put(statistic, value);
    }
  }

  /** What a move of each layer by all of itself is worth, of some of the layers. */
  private static double[] sum(List<Integer> positions, double[] worth) {
    double[] weights = new double[worth.length];
    positions.forEach(position -> weights[position - 1] = worth[position - 1]);
    return weights;
  }

  private double[] mass() {
    return worth(layer -> Directions.density(layer).orElse(Double.NaN));
  }

  private double[] time() {
    return worth(layer -> Directions.slowness(layer).orElse(Double.NaN));
  }

  private double[] thickness() {
    return worth(layer -> 1);
  }

  private double[] worth(ToDoubleFunction<ReportedLayer> per) {
    return IntStream.range(0, series.layers)
        .mapToDouble(i -> series.usualUm[i] * per.applyAsDouble(series.structure.reported().get(i)))
        .toArray();
  }

  private void noteSums(Findings findings, LevelChange change) {
    List<Integer> moved = change.clearest.positions();
    if (!moved.isEmpty()) {
      List<Integer> others =
          IntStream.rangeClosed(1, series.layers)
              .filter(position -> !moved.contains(position))
              .boxed()
              .toList();
      if (!others.isEmpty()) {
        findings.put(
            Statistic.TOTAL_FOLLOWS_Z, Math.abs(change.z(sum(others, thickness()))), moved);
      }
    }
    putIfFinite(findings, Statistic.MASS_CHANGE_Z, Math.abs(change.z(mass())));
    putIfFinite(findings, Statistic.TIME_OF_FLIGHT_CHANGE_Z, Math.abs(change.z(time())));
    findings.put(
        Statistic.TOTAL_PERCENT, 100 * LevelScan.dot(thickness(), change.moves) / series.totalUm());
    findings.put(Statistic.MOVED_PERCENT, 100 * movedPart(change), moved);
  }

  /** The multiple of the clearest direction, as a part of the layer that it moves first. */
  private static double movedPart(LevelChange change) {
    double[] weighed = change.noise.weighed(change.clearest.moves());
    double multiple =
        LevelScan.dot(weighed, change.moves) / LevelScan.dot(weighed, change.clearest.moves());
    double most = 0;
    for (double move : change.clearest.moves()) {
      most = Math.abs(move) > Math.abs(most) ? move : most;
    }
    return multiple * most;
  }

  private void noteCourse(Findings findings, LevelChange change) {
    findings.put(Statistic.STEP_RATHER_THAN_DRIFT, change.choice.stepRatherThanDrift());
    findings.put(Statistic.LEVELS_OFF, change.choice.levelsOff());
    change.choice.backZ().ifPresent(z -> findings.put(Statistic.STEP_BACK_AT_SCREEN_Z, z));
    List<Integer> moved = new ArrayList<>(change.clearest.positions());
    boolean isCore =
        !moved.isEmpty()
            && moved.stream()
                .anyMatch(
                    position ->
                        series.structure.reported().get(position - 1).members().stream()
                            .anyMatch(member -> member.role() == Role.CORE));
    findings.put(Statistic.CORE_MOVED, isCore ? 1 : 0, moved);
  }
}
