package dev.filmward.pipeline;

import dev.filmward.chart.Baseline;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.LimitsVersion.BaselineSpan;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Structure;
import dev.filmward.stats.ChartConstants;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.Subgrouping;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Makes control limits out of a baseline. Limits never move by themselves: until a person freezes
 * them they are on trial, shown and without alarms.
 */
final class LimitsDesk {
  /** Fewer subgroups than this give no limits, not even trial ones (common practice, no source). */
  static final int FEWEST = 20;

  /** Subgroups in a baseline unless a person says otherwise (common practice, no source). */
  static final int USUAL = 25;

  private LimitsDesk() {}

  /** Limits on trial from the first subgroups of a series. */
  static Optional<LimitsVersion> trial(Tables tables, Series series) {
    return fromBaseline(
        tables.figures().first(series, USUAL),
        1,
        new Decision("nobody", "on trial", Instant.EPOCH));
  }

  /**
   * Freezes limits for all characteristics of a production.
   *
   * <p>The first version takes the first subgroups as baseline and holds from their beginning; a
   * later one takes the last subgroups and holds from the next sample on.
   *
   * @return how many characteristics have the new version
   * @throws IllegalStateException where there are too few subgroups
   */
  static FrozenLimits freeze(
      Tables tables, Production production, int subgroups, Decision decision) {
    int frozen = 0;
    int newest = 0;
    Instant since = Instant.MAX;
    for (Characteristic characteristic :
        Subgrouping.layersAndTotal(production.structure()).characteristics()) {
      Series series =
          new Series(production.line(), production.structure().code(), characteristic.position());
      Optional<LimitsVersion> version = next(tables, series, subgroups, decision);
      if (version.isPresent()) {
        tables.limits().add(series, version.get());
        frozen++;
        newest = Math.max(newest, version.get().version());
        since = since.isBefore(version.get().holdsFrom()) ? since : version.get().holdsFrom();
      }
    }
    if (frozen == 0) {
      throw new IllegalStateException(
          "Limits need at least "
              + FEWEST
              + " samples in the baseline; wait for more, then freeze them.");
    }
    return new FrozenLimits(newest, frozen, since);
  }

  /** What is frozen. */
  record Production(String line, Structure structure) {}

  private static Optional<LimitsVersion> next(
      Tables tables, Series series, int subgroups, Decision decision) {
    List<LimitsVersion> versions = tables.limits().of(series);
    if (versions.isEmpty()) {
      return fromBaseline(tables.figures().first(series, subgroups), 1, decision);
    }
    int version = versions.get(versions.size() - 1).version() + 1;
    return fromBaseline(tables.figures().last(series, subgroups), version, decision)
        .map(LimitsDesk::holdingAfterBaseline);
  }

  private static LimitsVersion holdingAfterBaseline(LimitsVersion version) {
    return new LimitsVersion(
        version.version(),
        version.limits(),
        version.baseline(),
        version.baseline().to().plusNanos(1000),
        version.decision());
  }

  private static Optional<LimitsVersion> fromBaseline(
      List<FigureRow> rows, int version, Decision decision) {
    List<FigureRow> measured = rows.stream().filter(row -> row.subgroup().isPresent()).toList();
    if (measured.size() < FEWEST || measured.stream().anyMatch(LimitsDesk::isTooLarge)) {
      return Optional.empty();
    }
    Baseline baseline = new Baseline();
    measured.stream().map(FigureRow::subgroup).flatMap(Optional::stream).forEach(baseline::add);
    Instant from = measured.get(0).takenAt();
    Instant to = measured.get(measured.size() - 1).takenAt();
    Optional<MeanRangeLimits> limits = baseline.limits();
    return limits.map(
        found ->
            new LimitsVersion(
                version, found, new BaselineSpan(from, to, measured.size()), from, decision));
  }

  private static boolean isTooLarge(FigureRow row) {
    return row.subgroup().filter(found -> found.size() > ChartConstants.LARGEST_SIZE).isPresent();
  }
}
