package dev.filmward.pipeline;

import dev.filmward.chart.LimitsState;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.film.Characteristic;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.LimitsTable.VersionKey;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.Subgrouping;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Puts control limits in force and moves them from state to state, each time because a person
 * decides so. Limits never move by themselves: until then they are on trial, shown and without
 * alarms.
 */
final class LimitsDesk {
  /** Fewer subgroups than this give no limits, not even trial ones (common practice, no source). */
  static final int FEWEST = 20;

  /** Subgroups in a baseline unless a person says otherwise (common practice, no source). */
  static final int USUAL = 25;

  private LimitsDesk() {}

  /** Limits on trial from the first subgroups of a series. */
  static Optional<LimitsVersion> trial(Tables tables, Series series) {
    BaselineRows rows = BaselineRows.read(tables, series, BaselineChoice.first(USUAL));
    StateChange shown =
        new StateChange(LimitsState.TRIAL, new Decision("nobody", "on trial", Instant.EPOCH));
    return rows.limits()
        .map(
            limits ->
                new LimitsVersion(1, limits, rows.span(), rows.span().from(), List.of(shown)));
  }

  /** The limits that a choice of baseline gives, for each characteristic that has enough of it. */
  static Map<Characteristic, BaselineRows> baselines(
      Tables tables, Production production, BaselineChoice choice) {
    Map<Characteristic, BaselineRows> baselines = new TreeMap<>();
    for (Characteristic characteristic :
        Subgrouping.layersAndTotal(production.structure()).characteristics()) {
      BaselineRows rows = BaselineRows.read(tables, production.series(characteristic), choice);
      baselines.put(characteristic, rows);
    }
    return baselines;
  }

  /**
   * Puts a new version in force for all characteristics of a production.
   *
   * <p>The first version holds from the beginning of its baseline, a later one from the next sample
   * on: what was judged before stays judged.
   *
   * @throws IllegalStateException where there are too few subgroups
   * @throws IllegalArgumentException where neighbouring samples are much alike and nobody said what
   *     is done about it
   */
  static FrozenLimits freeze(
      Tables tables, Production production, BaselineChoice choice, StateChange change) {
    String line = production.line();
    String code = production.structure().code();
    int version = tables.limits().newestVersion(line, code) + 1;
    Optional<Instant> next =
        version == 1
            ? Optional.empty()
            : Optional.of(production.next(tables).orElseThrow(LimitsDesk::tooFew));
    var baselines = baselines(tables, production, choice);
    if (change.state() == LimitsState.FROZEN) {
      AutocorrelationGate.check(baselines, choice.remedy());
    }
    int frozen = 0;
    Instant since = Instant.MAX;
    for (var entry : baselines.entrySet()) {
      BaselineRows rows = entry.getValue();
      if (rows.limits().isPresent()) {
        Instant from = next.orElse(rows.span().from());
        LimitsVersion made =
            new LimitsVersion(version, rows.limits().get(), rows.span(), from, List.of(change));
        tables.limits().add(production.series(entry.getKey()), made);
        frozen++;
        since = since.isBefore(from) ? since : from;
      }
    }
    if (frozen == 0) {
      throw tooFew();
    }
    VersionKey key = new VersionKey(line, code, version);
    tables.limits().decide(key, change);
    tables.limits().exclude(key, choice.exclusions());
    choice
        .remedy()
        .ifPresent(remedy -> tables.limits().remedy(key, remedy.word(), change.decision()));
    return new FrozenLimits(version, frozen, since);
  }

  /**
   * Moves a version into another state.
   *
   * @throws NoSuchElementException if there is no such version
   * @throws IllegalStateException if it cannot become that
   */
  static void move(
      Tables tables, VersionKey key, StateChange change, Optional<Production> production) {
    List<StateChange> changes = tables.limits().changes(key);
    if (changes.isEmpty()) {
      throw new NoSuchElementException(
          "no limits version " + key.version() + " for " + key.structure() + " on " + key.line());
    }
    LimitsState now = changes.get(changes.size() - 1).state();
    if (!now.mayBecome(change.state())) {
      throw new IllegalStateException(
          "limits that are " + now.word() + " cannot become " + change.state().word());
    }
    if (change.state() == LimitsState.FROZEN && changes.get(0).state() != LimitsState.FROZEN) {
      production.ifPresent(made -> AutocorrelationGate.checkKept(tables, made, key));
    }
    tables.limits().decide(key, change);
  }

  private static IllegalStateException tooFew() {
    return new IllegalStateException(
        "Limits need at least "
            + FEWEST
            + " samples in the baseline; wait for more, then freeze them.");
  }
}
