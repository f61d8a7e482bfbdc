package dev.filmward.report;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.Charted;
import dev.filmward.report.FilmWeek.Ply;
import dev.filmward.report.FilmWeek.SamplesWeek;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.Subgrouping;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads one film on one line. Within one transaction, for one thread. */
final class FilmReader {
  private final String line;
  private final Structure structure;
  private final ReportSettings settings;

  FilmReader(String line, Structure structure, ReportSettings settings) {
    this.line = line;
    this.structure = structure;
    this.settings = settings;
  }

  /** The span of a week; both its ends belong to it. */
  static Span span(ReportWeek week) {
    return new Span(week.from(), week.to().minusNanos(1000));
  }

  /** Empty where nothing was made in the week nor in the one before. */
  Optional<FilmWeek> read(Tables tables, ReportWeek week, DataDigest digest) {
    Samples now = samples(tables, week, Optional.of(digest));
    Samples then = samples(tables, week.minus(1), Optional.empty());
    if (now.received == 0 && then.received == 0) {
      return Optional.empty();
    }
    List<CharacteristicWeek> characteristics = characteristics(tables, week, now, WeekReader.TREND);
    Verdict before = Verdicts.of(characteristics(tables, week.minus(1), then, 0));
    FilmFacts facts = new FilmFacts(tables, line, structure, week);
    FilmWeek film =
        new FilmWeek(
            line,
            structure.code(),
            structure.name(),
            plies(characteristics),
            now.received == 0 ? Verdict.NO_DATA : Verdicts.of(characteristics),
            then.received == 0 ? Verdict.NO_DATA : before,
            characteristics,
            facts.alarms(),
            facts.gauge(now.tallies),
            facts.limits(),
            now.week(facts.expected(now.times)),
            facts.leftOut(),
            List.of());
    return Optional.of(Acts.added(film, settings.asked()));
  }

  /** What the samples of a week add up to. */
  private static final class Samples {
    private final List<CharacteristicTally> tallies;
    private final List<Instant> times = new ArrayList<>();
    private long received;
    private long charted;
    private long missing;
    private long changed;

    private Samples(List<CharacteristicTally> tallies) {
      this.tallies = tallies;
    }

    private void add(Sample sample) {
      charted++;
      missing += (long) sample.layers() * sample.laneCount() - sample.readings();
      tallies.forEach(tally -> tally.add(sample));
    }

    private SamplesWeek week(long expected) {
      return new SamplesWeek(received, charted, expected, missing, changed);
    }
  }

  private Samples samples(Tables tables, ReportWeek week, Optional<DataDigest> digest) {
    List<Characteristic> all = new ArrayList<>(Subgrouping.withShares(structure).characteristics());
    Samples samples =
        new Samples(all.stream().map(each -> new CharacteristicTally(structure, each)).toList());
    Charted charted = Charted.asKept(tables);
    tables
        .samples()
        .within(
            line,
            structure.code(),
            span(week),
            stored -> {
              samples.received++;
              samples.times.add(stored.sample().takenAt());
              if (stored.isThinned() || stored.sample().layers() != structure.reported().size()) {
                samples.changed++;
                return;
              }
              charted
                  .of(stored.sample())
                  .ifPresent(
                      sample -> {
                        digest.ifPresent(into -> into.add(sample));
                        samples.add(sample);
                      });
            });
    return samples;
  }

  private List<CharacteristicWeek> characteristics(
      Tables tables, ReportWeek week, Samples samples, int trend) {
    SeriesWeeks series = new SeriesWeeks(tables, line, structure, week);
    List<CharacteristicWeek> weeks = new ArrayList<>();
    for (CharacteristicTally tally : samples.tallies) {
      weeks.add(new CharacteristicJudge(settings, line, structure, tally).week(series, trend));
    }
    return weeks;
  }

  private List<Ply> plies(List<CharacteristicWeek> weeks) {
    List<Ply> plies = new ArrayList<>();
    for (ReportedLayer layer : structure.reported()) {
      OptionalDouble mean =
          weeks.stream()
              .filter(
                  each ->
                      each.kind() == Characteristic.Kind.LAYER
                          && each.position() == layer.position())
              .findFirst()
              .map(CharacteristicWeek::mean)
              .orElse(OptionalDouble.empty());
      plies.add(
          new Ply(
              layer.position(),
              layer.name(),
              layer.members().stream()
                  .map(Layer::role)
                  .map(role -> role.name().toLowerCase(Locale.ROOT))
                  .toList(),
              layer.individual().target(),
              mean));
    }
    return plies;
  }
}
