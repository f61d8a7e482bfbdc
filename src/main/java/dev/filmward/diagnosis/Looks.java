package dev.filmward.diagnosis;

import dev.filmward.film.Sample;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * All looks at one history, in the order in which one takes away what would disturb the next: short
 * disturbances are left out, and of a change of level, a wave and a swing the clearer one is taken
 * out of the series before the others are looked for.
 */
final class Looks {
  private final FilmSeries series;
  private final Findings findings;
  private final Observations observations;
  private Optional<ScatterLook.Rise> rise = Optional.empty();
  private List<Sample> samples;
  private double[] minutes;
  private int last;
  private Timeline timeline;

  Looks(FilmSeries series, Findings findings) {
    this.series = series;
    this.findings = findings;
    this.observations = new Observations(series, findings);
    keep(IntStream.range(0, series.size()).toArray());
  }

  /** From now on only these samples are looked at. */
  private int[] keep(int[] kept) {
    samples = IntStream.of(kept).mapToObj(series.samples::get).toList();
    minutes = IntStream.of(kept).mapToDouble(series::minutes).toArray();
    last = (int) IntStream.of(kept).filter(t -> t <= series.alarm).count() - 1;
    timeline = new Timeline(samples, series.history.boundaries());
    return kept;
  }

  void look() {
    lookAcross();
    Optional<ShortLook.Disturbance> off = new ShortLook(series).look(findings, this::blur);
    off.ifPresent(observations::disturbance);
    int[] kept =
        IntStream.range(0, series.size())
            .filter(t -> off.isEmpty() || t < off.get().from() || t >= off.get().end())
            .toArray();
    keep(kept);
    lookAlong(IntStream.of(kept).mapToObj(t -> series.level[t]).toArray(double[][]::new));
  }

  private void lookAcross() {
    int[] all = IntStream.range(0, series.size()).toArray();
    LanesLook lanes = new LanesLook(series, all, last);
    Optional<LanesLook.Place> place = lanes.clearest();
    int changed =
        place.filter(is -> is.z() >= LanesLook.CLEAR).map(LanesLook.Place::from).orElse(0);
    rise = new ScatterLook(series, all, last, changed).look(findings);
    rise.ifPresent(is -> observations.scatter(samples, is));
    place.ifPresent(is -> noteLanes(lanes, is));
  }

  private void noteLanes(LanesLook lanes, LanesLook.Place place) {
    double z = place.z() / blur(place.positions());
    findings.put(Statistic.LANES_Z, z, place.positions());
    if (z >= LanesLook.CLEAR) {
      lanes.note(place, findings);
      observations.profile(samples, place);
    }
  }

  private double blur(List<Integer> positions) {
    return rise.map(is -> is.blur(positions)).orElse(1.0);
  }

  private void lookAlong(double[][] level) {
    Optional<LevelChange> change = levelChange(level);
    double gain = change.map(is -> is.gain).orElse(0.0);
    double[][] rest = change.map(is -> scan(level).without(is.course)).orElse(level);
    double[][] calm = level;
    DailyLook daily = new DailyLook(series, level, minutes);
    if (daily.canLook()) {
      DailyLook.Wave wave = daily.look(new Findings());
      if (wave.z >= DailyLook.CLEAR && wave.z * wave.z > gain) {
        daily.look(findings);
        calm = daily.without(wave);
        rest = calm;
      } else {
        new DailyLook(series, rest, minutes).look(findings);
      }
      observations.daily();
    }
    PeriodLook swings = new PeriodLook(calm, minutes);
    PeriodLook.Peak peak = swings.highest();
    if (peak.falseAlarm() < PeriodLook.CLEAR && swings.gain(peak) > gain) {
      notePeriod(swings, peak);
      calm = swings.without(peak);
    } else {
      PeriodLook quiet = new PeriodLook(rest, minutes);
      notePeriod(quiet, quiet.highest());
    }
    noteLevel(calm);
  }

  private LevelScan scan(double[][] level) {
    return new LevelScan(level, minutes, last, List.of());
  }

  private LevelLook levels() {
    return new LevelLook(series, minutes, last, timeline.screens(), this::blur);
  }

  private Optional<LevelChange> levelChange(double[][] level) {
    return levels().look(level, new Findings());
  }

  /** The change that is left once a wave or a swing is taken out. */
  private void noteLevel(double[][] calm) {
    Optional<LevelChange> change = levels().look(calm, findings);
    if (change.isEmpty()) {
      return;
    }
    LevelChange is = change.get();
    timeline.note(findings, is);
    Since since = new Beginning(samples, is).of(LevelLook.series(calm, is.clearest, is.noise));
    observations.level(is, since, timeline.at(is));
  }

  private void notePeriod(PeriodLook swings, PeriodLook.Peak peak) {
    findings.put(Statistic.PERIODIC_FALSE_ALARM, peak.falseAlarm(), List.of(peak.layer() + 1));
    if (peak.falseAlarm() >= PeriodLook.CLEAR) {
      return;
    }
    PeriodLook.Swing swing = swings.swing(peak);
    List<Integer> positions = swings.swinging(peak);
    findings.put(Statistic.PERIODIC_FALSE_ALARM, peak.falseAlarm(), positions);
    findings.put(Statistic.PERIOD_MINUTES, peak.periodMinutes(), List.of(peak.layer() + 1));
    findings.put(Statistic.PERIODIC_LAYERS, (double) positions.size() / series.layers, positions);
    findings.put(
        Statistic.PERIODIC_PERCENT, 100 * swing.wave().amplitude(), List.of(peak.layer() + 1));
    observations.swing(samples, swing);
  }
}
