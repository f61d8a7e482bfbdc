package dev.filmward.pipeline;

import dev.filmward.chart.Baseline;
import dev.filmward.chart.LimitsVersion.BaselineSpan;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.stats.ChartConstants;
import dev.filmward.store.FigureRow;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.LimitsTable.Exclusion;
import dev.filmward.store.Tables;
import dev.filmward.subgroup.Subgroup;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The subgroups of one series that a baseline takes, those that a person left out set aside.
 *
 * @param taken measured subgroups, in time order
 */
record BaselineRows(List<FigureRow> taken, long excluded) {

  static BaselineRows read(Tables tables, Series series, BaselineChoice choice) {
    List<FigureRow> rows =
        switch (choice.where()) {
          case FIRST -> tables.figures().first(series, choice.subgroups());
          case LAST -> tables.figures().last(series, choice.subgroups());
          case BETWEEN -> tables.figures().within(series, new Span(choice.from(), choice.to()));
        };
    Set<String> left =
        choice.exclusions().stream().map(BaselineRows::name).collect(Collectors.toSet());
    List<FigureRow> measured = rows.stream().filter(row -> row.subgroup().isPresent()).toList();
    List<FigureRow> taken = measured.stream().filter(row -> !left.contains(name(row))).toList();
    return new BaselineRows(taken, measured.size() - taken.size());
  }

  /** Limits, where there are enough subgroups and none is too large for its range to tell. */
  Optional<MeanRangeLimits> limits() {
    if (taken.size() < LimitsDesk.FEWEST || taken.stream().anyMatch(BaselineRows::isTooLarge)) {
      return Optional.empty();
    }
    Baseline baseline = new Baseline();
    subgroups().forEach(baseline::add);
    return baseline.limits();
  }

  List<Subgroup> subgroups() {
    return taken.stream().map(FigureRow::subgroup).flatMap(Optional::stream).toList();
  }

  /** How alike neighbouring samples are, where that can be told. */
  Optional<BaselineTrust> trust() {
    return limits().flatMap(found -> BaselineTrust.of(this, found));
  }

  /** Asked only where there are limits. */
  BaselineSpan span() {
    return new BaselineSpan(
        taken.get(0).takenAt(), taken.get(taken.size() - 1).takenAt(), taken.size(), excluded);
  }

  private static boolean isTooLarge(FigureRow row) {
    return row.subgroup().filter(found -> found.size() > ChartConstants.LARGEST_SIZE).isPresent();
  }

  private static String name(FigureRow row) {
    return row.key().roll() + '\0' + row.key().sample();
  }

  private static String name(Exclusion exclusion) {
    return exclusion.roll() + '\0' + exclusion.sample();
  }
}
