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
  private final int[] kept;
  private final List<Sample> samples;
  private final double[] minutes;
  private final int last;
  private final Timeline timeline;
  private final Observations observations;
  private Optional<ScatterLook.Rise> rise = Optional.empty();

  Looks(FilmSeries series, Findings findings) {
    this.series = series;
    this.findings = findings;
    this.observations = new Observations(series, findings);
    Optional<ShortLook.Disturbance> off = new ShortLook(series).look(findings);
    off.ifPresent(observations::disturbance);
    this.kept =
        IntStream.range(0, series.size())
            .filter(t -> off.isEmpty() || t < off.get().from() || t >= off.get().end())
            .toArray();
    this.samples = IntStream.of(kept).mapToObj(series.samples::get).toList();
    this.minutes = IntStream.of(kept).mapToDouble(series::minutes).toArray();
    this.last = (int) IntStream.of(kept).filter(t -> t <= series.alarm).count() - 1;
    this.timeline = new Timeline(samples, series.history.boundaries());
  }

  void look() {
    LanesLook lanes = new LanesLook(series, kept, last);
    Optional<LanesLook.Place> place = lanes.clearest();
    int profileFrom = place.filter(is -> is.z() >= LanesLook.CLEAR).map(LanesLook.Place::from).orElse(0);
    rise = new ScatterLook(series, kept, last, profileFrom).look(findings);
    rise.ifPresent(is -> observations.scatter(samples, is));
    place.ifPresent(is -> noteLanes(lanes, is));
    lookAlong(IntStream.of(kept).mapToObj(t -> series.level[t]).toArray(double[][]::new));
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
      calm = swings.without(peak.periodMinutes(), swings.swing(peak).from());
    } else {
      PeriodLook quiet = new PeriodLook(rest, minutes);
      notePeriod(quiet, quiet.highest());
    }
    noteLevel(level, calm, change);
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
  private void noteLevel(double[][] level, double[][] calm, Optional<LevelChange> first) {
    Optional<LevelChange> change = levels().look(calm, findings);
    if (calm == level && first.isEmpty() != change.isEmpty()) {
      throw new IllegalStateException("two looks at the same series differ");
    }
    if (change.isEmpty()) {
      return;
    }
    LevelChange is = change.get();
    timeline.note(findings, is);
    Since since =
        new Beginning(samples, is).of(LevelLook.series(calm, is.clearest, is.noise));
    observations.level(is, since, timeline.at(is));
  }

  private void notePeriod(PeriodLook swings, PeriodLook.Peak peak) {
    findings.put(
        Statistic.PERIODIC_FALSE_ALARM, peak.falseAlarm(), List.of(peak.layer() + 1));
    if (peak.falseAlarm() >= PeriodLook.CLEAR) {
      return;
    }
    PeriodLook.Swing swing = swings.swing(peak);
    List<Integer> positions = swings.swinging(peak.periodMinutes(), swing.from());
    findings.put(Statistic.PERIODIC_FALSE_ALARM, peak.falseAlarm(), positions);
    findings.put(Statistic.PERIOD_MINUTES, peak.periodMinutes(), List.of(peak.layer() + 1));
    findings.put(
        Statistic.PERIODIC_LAYERS, (double) positions.size() / series.layers, positions);
    findings.put(
        Statistic.PERIODIC_PERCENT, 100 * swing.amplitude(), List.of(peak.layer() + 1));
    observations.swing(samples, swing);
  }
}
