package dev.filmward.pipeline;

import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structures;
import dev.filmward.gauge.screen.Flag;
import dev.filmward.gauge.screen.RecentSamples;
import dev.filmward.gauge.screen.RecentSamples.Standing;
import dev.filmward.gauge.screen.Screen;
import dev.filmward.gauge.screen.ScreeningRules;
import dev.filmward.gauge.screen.ScreeningState;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.SampleTable.Stored;
import dev.filmward.store.ScreenedSample;
import dev.filmward.store.ScreeningVersion;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Screens what a line makes of a structure: works the flags of changed samples, and of those that
 * come soon after them, out again, keeps what differs, and has the figures of samples worked out
 * again that are charted now and were not, or the other way round. The same whatever the pieces in
 * which samples came: a flag follows from the sample and the {@link RecentSamples#MOST} before it.
 * Within one transaction, for one thread.
 */
final class Screening {
  static final Comparator<Sample> IN_TIME =
      Comparator.comparing(Sample::takenAt)
          .thenComparing(sample -> sample.key().roll())
          .thenComparing(sample -> sample.key().sample());

  private final Tables tables;
  private final Production production;
  private final Screen screen;
  private final List<ScreeningVersion> versions;
  private final RecentSamples recent;
  private final LineGauge gauge;
  private final Instant now;

  Screening(Tables tables, Production production, Structures structures, Instant now) {
    this.tables = tables;
    this.production = production;
    this.now = now;
    this.screen = new Screen(production.structure(), structures.all());
    this.recent = screen.recent();
    this.gauge = LineGauge.of(tables, production.line());
    this.versions = tables.screeningVersions().of(production.line(), production.structure().code());
  }

  /** How a sample is screened that was taken at a moment. */
  static ScreeningRules rules(List<ScreeningVersion> versions, Instant takenAt) {
    ScreeningRules rules = ScreeningRules.USUAL;
    for (ScreeningVersion version : versions) {
      if (!version.holdsFrom().isAfter(takenAt)) {
        rules = version.rules();
      }
    }
    return rules;
  }

  /**
   * Screens new samples, none of which was taken before or with one that is kept.
   *
   * @param samples at least one
   */
  void ofNew(Collection<Sample> samples) {
    List<Sample> inTime = new ArrayList<>(samples);
    inTime.sort(IN_TIME);
    remember(inTime.get(0).takenAt());
    Map<SampleKey, List<Flag>> flagged = new HashMap<>();
    for (Sample sample : inTime) {
      List<Flag> flags = flags(sample);
      if (!flags.isEmpty()) {
        flagged.put(sample.key(), flags);
      }
      recent.add(sample, Standing.BY_RULE);
    }
    if (!flagged.isEmpty()) {
      keepNew(flagged);
    }
  }

  private void keepNew(Map<SampleKey, List<Flag>> flagged) {
    List<ScreenedSample> screened = new ArrayList<>();
    tables
        .samples()
        .known(flagged.keySet())
        .forEach(
            (key, stored) -> {
              List<Flag> flags = flagged.getOrDefault(key, List.of());
              Instant takenAt = stored.sample().takenAt();
              screened.add(
                  new ScreenedSample(stored, rules(versions, takenAt).state(flags), flags));
            });
    screened.sort(Comparator.comparing(each -> each.stored().sample(), IN_TIME));
    tables.screening().replace(screened, now);
    refigure(
        screened.stream()
            .filter(ScreenedSample::isOutOfCharts)
            .map(ScreenedSample::stored)
            .toList());
  }

  /**
   * Screens samples that changed, or came late, and those after them that they bear upon.
   *
   * @param samples as they are kept now; at least one
   */
  void ofChanged(Collection<Sample> samples) {
    Instant from = samples.stream().map(Sample::takenAt).min(Instant::compareTo).orElseThrow();
    Instant to = samples.stream().map(Sample::takenAt).max(Instant::compareTo).orElseThrow();
    Set<SampleKey> changed = new HashSet<>();
    samples.forEach(sample -> changed.add(sample.key()));
    remember(from);
    String line = production.line();
    String code = production.structure().code();
    List<ScreenedSample> kept = new ArrayList<>();
    kept.addAll(tables.screening().within(line, code, new Span(from, to)));
    kept.addAll(tables.screening().after(line, code, to, RecentSamples.MOST));
    List<ScreenedSample> differ = new ArrayList<>();
    List<Stored> refigured = new ArrayList<>();
    for (ScreenedSample before : kept) {
      ScreenedSample after = screened(before);
      Sample sample = before.stored().sample();
      recent.add(sample, standing(after));
      boolean isChanged = changed.contains(sample.key());
      if (!after.equals(before) || (isChanged && after.state().isPresent())) {
        differ.add(after);
      }
      if (after.isOutOfCharts() != before.isOutOfCharts() || (isChanged && after.isOutOfCharts())) {
        refigured.add(before.stored());
      }
    }
    tables.screening().replace(differ, now);
    refigure(refigured);
  }

  /** What was usual when a sample was taken, by layer, um; NaN where it is not known. */
  List<Double> usualUm(Sample sample) {
    remember(sample.takenAt());
    return recent.usualUm();
  }

  private ScreenedSample screened(ScreenedSample before) {
    Sample sample = before.stored().sample();
    List<Flag> flags = flags(sample);
    Optional<ScreeningState> state =
        before
            .state()
            .filter(ScreeningState::isDecided)
            .or(() -> rules(versions, sample.takenAt()).state(flags));
    return new ScreenedSample(before.stored(), state, flags);
  }

  private static Standing standing(ScreenedSample sample) {
    return sample.state().map(ScreeningState::standing).orElse(Standing.BY_RULE);
  }

  private List<Flag> flags(Sample sample) {
    ScreeningRules rules = rules(versions, sample.takenAt());
    OptionalDouble mhz =
        rules.gaugeMhz().isPresent() ? rules.gaugeMhz() : gauge.mhzAt(sample.takenAt());
    return rules.keep(screen.flags(sample, recent, mhz));
  }

  private void remember(Instant before) {
    tables
        .screening()
        .before(production.line(), production.structure().code(), before, RecentSamples.MOST)
        .forEach(each -> recent.add(each.stored().sample(), standing(each)));
  }

  private void refigure(List<Stored> samples) {
    if (!samples.isEmpty()) {
      new Refiguring(tables).run(samples, production.structure());
    }
  }
}
