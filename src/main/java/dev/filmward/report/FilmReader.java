package dev.filmward.report;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.Charted;
import dev.filmward.pipeline.LongWork;
import dev.filmward.pipeline.SpecTimes;
import dev.filmward.pipeline.StructureTimes;
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
  private final StructureTimes times;
  private final ReportSettings settings;
  private final Instant now;
  private final LongWork work;

  /**
   * @param now until when samples could have come
   * @param work of which this is a part
   */
  FilmReader(
      String line, StructureTimes times, ReportSettings settings, Instant now, LongWork work) {
    this.line = line;
    this.times = times;
    this.settings = settings;
    this.now = now;
    this.work = work;
  }

  /** The span of a week; both its ends belong to it. */
  static Span span(ReportWeek week) {
    return new Span(week.from(), week.to().minusNanos(1000));
  }

  /** A film's week and the digest of its charted readings. */
  record Read(FilmWeek film, String dataDigest) {}

  /** The version that held when a week ended, or that holds now. */
  private Structure structure(ReportWeek week) {
    Instant last = span(week).to();
    return times.at(now.isBefore(last) ? now : last);
  }

  /** Empty where nothing was made in the week nor in the one before. */
  Optional<Read> read(Tables tables, ReportWeek week) {
    DataDigest digest = new DataDigest();
    Samples current = samples(tables, week, Optional.of(digest));
    Samples then = samples(tables, week.minus(1), Optional.empty());
    if (current.received == 0 && then.received == 0) {
      return Optional.empty();
    }
    List<CharacteristicWeek> last = characteristics(tables, week.minus(1), then, List.of());
    List<CharacteristicWeek> characteristics = characteristics(tables, week, current, last);
    Structure structure = structure(week);
    FilmFacts facts = new FilmFacts(tables, line, structure, week);
    FilmWeek film =
        new FilmWeek(
            line,
            structure.code(),
            structure.name(),
            plies(structure, characteristics),
            current.received == 0 ? Verdict.NO_DATA : Verdicts.of(characteristics),
            then.received == 0 ? Verdict.NO_DATA : Verdicts.of(last),
            characteristics,
            facts.alarms(),
            facts.gauge(current.parts.stream().map(CharacteristicParts::last).toList()),
            facts.limits(),
            current.week(facts.expected(current.times, then.times, now)),
            facts.leftOut(),
            List.of());
    return Optional.of(new Read(Acts.added(film, settings.asked()), digest.hex()));
  }

  /** What the samples of a week add up to. */
  private static final class Samples {
    private final List<CharacteristicParts> parts;
    private final List<Instant> times = new ArrayList<>();
    private long received;
    private long charted;
    private long missing;
    private long changed;

    private Samples(List<CharacteristicParts> parts) {
      this.parts = parts;
    }

    private void add(Sample sample) {
      charted++;
      missing += (long) sample.layers() * sample.laneCount() - sample.readings();
      parts.forEach(each -> each.add(sample));
    }

    private SamplesWeek week(long expected) {
      return new SamplesWeek(received, charted, expected, missing, changed);
    }
  }

  private Samples samples(Tables tables, ReportWeek week, Optional<DataDigest> digest) {
    Structure structure = structure(week);
    Samples samples =
        new Samples(
            Subgrouping.withShares(structure).characteristics().stream()
                .map(each -> new CharacteristicParts(each, asked(each), span(week).to()))
                .toList());
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

  /** Nothing is asked of shares. */
  private SpecTimes asked(Characteristic characteristic) {
    return characteristic.kind() == Characteristic.Kind.SHARE
        ? SpecTimes.none()
        : times.specs(characteristic);
  }

  /**
   * Judges each.
   *
   * @param before the same of the week before, for the trend; empty: no trend
   */
  private List<CharacteristicWeek> characteristics(
      Tables tables, ReportWeek week, Samples samples, List<CharacteristicWeek> before) {
    SeriesWeeks series = new SeriesWeeks(tables, line, times, week);
    Structure structure = structure(week);
    List<CharacteristicWeek> weeks = new ArrayList<>();
    for (int i = 0; i < samples.parts.size(); i++) {
      work.goOn();
      CharacteristicParts parts = samples.parts.get(i);
      Optional<CharacteristicWeek> last =
          before.isEmpty() ? Optional.empty() : Optional.of(before.get(i));
      weeks.add(new CharacteristicJudge(settings, line, structure, parts).week(series, last));
    }
    return weeks;
  }

  private static List<Ply> plies(Structure structure, List<CharacteristicWeek> weeks) {
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
