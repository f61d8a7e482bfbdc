package dev.filmward.pipeline;

import dev.filmward.chart.LimitsState;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.film.Characteristic;
import dev.filmward.gauge.calibration.LayerScalings;
import dev.filmward.gauge.calibration.Scale;
import dev.filmward.gauge.calibration.Scaling.Word;
import dev.filmward.store.LimitsTable.VersionKey;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * Carries limits along with a re-scaling of one layer: each version that is in force from then on
 * gets a successor whose centre and spread of that layer are moved as the readings are. The centre
 * of the total moves by what that of the layer does; its spread stays as it was, which is off by at
 * most the layer's own spread times the change of the factor. For one thread, in the transaction
 * that re-scales.
 */
final class CarriedLimits {
  private final Tables tables;
  private final Production production;
  private final int position;
  private final Word word;

  /** How the readings of the layer change. */
  private record Move(Scale was, Scale is) {
    private double factor() {
      return is.factor() / was.factor();
    }

    private double of(double um) {
      return is.of((um - was.offsetUm()) / was.factor());
    }
  }

  CarriedLimits(Tables tables, Production production, int position, Word word) {
    this.tables = tables;
    this.production = production;
    this.position = position;
    this.word = word;
  }

  /**
   * Carries those that held for readings from a moment on.
   *
   * @param from the re-scaling's moment
   * @return how many versions that were
   */
  int carry(Instant from, LayerScalings before, LayerScalings after) {
    Map<Integer, Map<Characteristic, LimitsVersion>> versions = new TreeMap<>();
    for (Characteristic each : production.characteristics()) {
      for (LimitsVersion version : tables.limits().of(production.series(each))) {
        versions.computeIfAbsent(version.version(), any -> new TreeMap<>()).put(each, version);
      }
    }
    int carried = 0;
    for (Map<Characteristic, LimitsVersion> source : versions.values()) {
      boolean holds = versions.values().stream().noneMatch(next -> ends(next, any(source), from));
      carried += holds && isInForce(any(source)) && carry(from, before, after, source) ? 1 : 0;
    }
    return carried;
  }

  private static LimitsVersion any(Map<Characteristic, LimitsVersion> version) {
    return version.values().iterator().next();
  }

  private static boolean isInForce(LimitsVersion version) {
    return version.state() == LimitsState.FROZEN || version.state() == LimitsState.PROVISIONAL;
  }

  /** Whether a later version has taken the place of an earlier one by a moment, or wholly. */
  private static boolean ends(
      Map<Characteristic, LimitsVersion> later, LimitsVersion earlier, Instant moment) {
    LimitsVersion next = any(later);
    boolean isBefore =
        !next.holdsFrom().isAfter(moment) || !next.holdsFrom().isAfter(earlier.holdsFrom());
    return next.version() > earlier.version() && isBefore;
  }

  private boolean carry(
      Instant from,
      LayerScalings before,
      LayerScalings after,
      Map<Characteristic, LimitsVersion> source) {
    Instant holdsFrom = any(source).holdsFrom();
    Instant moment = holdsFrom.isBefore(from) ? from : holdsFrom;
    Move move = new Move(before.at(moment), after.at(moment));
    if (!move.was.equals(move.is)) {
      add(source, move, moment);
    }
    return !move.was.equals(move.is);
  }

  private void add(Map<Characteristic, LimitsVersion> source, Move move, Instant moment) {
    LimitsVersion any = any(source);
    String line = production.line();
    String code = production.structure().code();
    VersionKey key = new VersionKey(line, code, tables.limits().newestVersion(line, code) + 1);
    StateChange change = new StateChange(any.state(), decision(any.version(), move));
    source.forEach(
        (what, version) -> {
          MeanRangeLimits limits = limits(what, version.limits(), source, move);
          LimitsVersion next =
              new LimitsVersion(key.version(), limits, version.baseline(), moment, List.of(change));
          tables.limits().add(production.series(what), next);
        });
    keep(key, new VersionKey(line, code, any.version()), change);
  }

  private void keep(VersionKey key, VersionKey source, StateChange change) {
    tables.limits().decide(key, change);
    tables.limits().exclude(key, tables.limits().exclusions(source));
    tables
        .limits()
        .remedy(source)
        .ifPresent(remedy -> tables.limits().remedy(key, remedy, change.decision()));
    tables.limits().carried(key, source.version());
    tables.audit().add(Audited.moved(key, change));
  }

  private Decision decision(int source, Move move) {
    String how =
        String.format(
            Locale.ROOT,
            "version %d carried along with the re-scaling of layer %d by %.6g: ",
            source,
            position,
            move.factor());
    return new Decision(word.by(), how + word.reason(), word.at());
  }

  private MeanRangeLimits limits(
      Characteristic what,
      MeanRangeLimits limits,
      Map<Characteristic, LimitsVersion> source,
      Move move) {
    if (what.position() == position) {
      double sigma = limits.sigmaWithin() * move.factor();
      return new MeanRangeLimits(move.of(limits.centre()), sigma);
    }
    return what.position() == 0
        ? new MeanRangeLimits(limits.centre() + shift(source, move), limits.sigmaWithin())
        : limits;
  }

  /** By what the centre of the layer moves, um; 0 where it has no limits. */
  private double shift(Map<Characteristic, LimitsVersion> source, Move move) {
    return source.entrySet().stream()
        .filter(entry -> entry.getKey().position() == position)
        .map(entry -> entry.getValue().limits().centre())
        .findFirst()
        .map(centre -> move.of(centre) - centre)
        .orElse(0.0);
  }
}
