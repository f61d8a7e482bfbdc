package dev.filmward.diagnosis;

import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Looks at readings that are missing, repeated or flagged, in the history as it came. */
final class ReadingsLook {
  private static final int LATEST_BEFORE = 10;
  private static final Map<String, Statistic> BY_KIND =
      Map.of(
          GaugeFlag.MISSED_BOUNDARY, Statistic.FLAGGED_MISSED_BOUNDARY,
          GaugeFlag.MISPLACED_BOUNDARY, Statistic.FLAGGED_MISPLACED_BOUNDARY,
          GaugeFlag.RANGE_END, Statistic.FLAGGED_RANGE_END,
          GaugeFlag.LOST_ECHO, Statistic.FLAGGED_LOST_ECHO,
          GaugeFlag.COUPLANT, Statistic.FLAGGED_COUPLANT);

  private final FilmHistory history;
  private final List<Sample> samples;
  private final int latest;

  ReadingsLook(FilmHistory history) {
    this.history = history;
    this.samples = history.samples();
    int alarm = 0;
    for (int t = 0; t < samples.size(); t++) {
      alarm = samples.get(t).takenAt().isAfter(history.alarmedAt()) ? alarm : t;
    }
    this.latest = Math.max(0, alarm - LATEST_BEFORE);
  }

  void look(Findings findings) {
    if (samples.size() < 2) {
      return;
    }
    noteMissing(findings);
    findings.put(Statistic.SAME_IN_A_ROW, sameInARow());
    noteFlags(findings);
  }

  private void noteMissing(Findings findings) {
    double share = missing(latest, samples.size());
    double before = latest == 0 ? 0 : missing(0, latest);
    findings.put(Statistic.MISSING_SHARE, share);
    double readings = places(latest, samples.size());
    double usual = Math.max(before, 1 / Math.max(1.0, places(0, latest)));
    double error = Math.sqrt(usual * (1 - Math.min(0.99, usual)) / readings);
    findings.put(Statistic.MISSING_Z, (share - usual) / error);
  }

  private double places(int from, int end) {
    double places = 0;
    for (Sample sample : samples.subList(from, end)) {
      places += (double) sample.layers() * sample.laneCount();
    }
    return places;
  }

  private double missing(int from, int end) {
    double readings = 0;
    for (Sample sample : samples.subList(from, end)) {
      readings += sample.readings();
    }
    double places = places(from, end);
    return places == 0 ? 0 : 1 - readings / places;
  }

  private double sameInARow() {
    int longest = 1;
    int run = 1;
    for (int t = 1; t < samples.size(); t++) {
      run = isSame(samples.get(t - 1), samples.get(t)) ? run + 1 : 1;
      longest = Math.max(longest, run);
    }
    return longest;
  }

  private static boolean isSame(Sample one, Sample other) {
    Sample moved = at(one, other.takenAt()).withKey(other.key());
    return one.readings() > 1 && moved.equals(at(other, other.takenAt()));
  }

  /** The readings of a sample as if taken at another moment, whatever the temperature was. */
  private static Sample at(Sample sample, Instant moment) {
    int[] lanes = new int[sample.laneCount()];
    double[][] um = new double[sample.layers()][lanes.length];
    for (int j = 0; j < lanes.length; j++) {
      lanes[j] = sample.lane(j);
      for (int i = 0; i < um.length; i++) {
        um[i][j] = sample.isMeasured(i + 1, j) ? sample.thicknessUm(i + 1, j) : Double.NaN;
      }
    }
    return new Sample(sample.key(), moment, lanes, um);
  }

  private void noteFlags(Findings findings) {
    List<Sample> late = samples.subList(latest, samples.size());
    findings.put(Statistic.FLAGGED, share(late, history.flags()));
    BY_KIND.forEach(
        (kind, statistic) -> {
          List<GaugeFlag> flags =
              history.flags().stream().filter(flag -> flag.kind().equals(kind)).toList();
          List<Integer> positions =
              flags.stream()
                  .flatMap(flag -> flag.positions().stream())
                  .distinct()
                  .sorted()
                  .toList();
          findings.put(statistic, share(late, flags), positions);
        });
  }

  private static double share(List<Sample> late, List<GaugeFlag> flags) {
    Set<SampleKey> flagged = new HashSet<>();
    flags.forEach(flag -> flagged.add(flag.sample()));
    long count = late.stream().filter(sample -> flagged.contains(sample.key())).count();
    return (double) count / late.size();
  }
}
