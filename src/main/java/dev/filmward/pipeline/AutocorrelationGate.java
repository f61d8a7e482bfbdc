package dev.filmward.pipeline;

import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.LimitsVersion.BaselineSpan;
import dev.filmward.film.Characteristic;
import dev.filmward.store.LimitsTable.VersionKey;
import dev.filmward.store.Tables;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Lets limits from a baseline of samples that are much alike be frozen only where a person says
 * what is done about it. Stateless.
 */
final class AutocorrelationGate {
  private AutocorrelationGate() {}

  /**
   * Checks a baseline about to be frozen.
   *
   * @throws IllegalArgumentException naming the worst characteristic and the choices
   */
  static void check(
      Map<Characteristic, BaselineRows> baselines, Optional<AutocorrelationRemedy> remedy) {
    if (remedy.isPresent()) {
      return;
    }
    Characteristic worst = null;
    double lag1 = BaselineTrust.STRONG;
    for (var entry : baselines.entrySet()) {
      Optional<BaselineTrust> trust = entry.getValue().trust().filter(BaselineTrust::isStrong);
      if (trust.isPresent() && trust.get().neighbours().lag1() > lag1) {
        worst = entry.getKey();
        lag1 = trust.get().neighbours().lag1();
      }
    }
    if (worst != null) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "neighbouring samples of %s are much alike (lag-1 autocorrelation %.2f), so these"
                  + " limits alarm without cause; to freeze them all the same, say in"
                  + " \"autocorrelation\" what is done about it: %s",
              worst.name(),
              lag1,
              AutocorrelationRemedy.words()));
    }
  }

  /** Checks the baseline of a version that is kept already. */
  static void checkKept(Tables tables, Production production, VersionKey key) {
    if (tables.limits().remedy(key).isPresent()) {
      return;
    }
    Map<Characteristic, BaselineRows> baselines = new TreeMap<>();
    for (Characteristic each : production.characteristics()) {
      tables.limits().of(production.series(each)).stream()
          .filter(version -> version.version() == key.version())
          .map(LimitsVersion::baseline)
          .forEach(span -> baselines.put(each, rows(tables, production, each, span, key)));
    }
    check(baselines, Optional.empty());
  }

  private static BaselineRows rows(
      Tables tables,
      Production production,
      Characteristic characteristic,
      BaselineSpan span,
      VersionKey key) {
    BaselineChoice choice =
        BaselineChoice.between(span.from(), span.to()).without(tables.limits().exclusions(key));
    return BaselineRows.read(tables, production.series(characteristic), choice);
  }
}
