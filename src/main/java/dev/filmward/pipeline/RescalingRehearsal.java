package dev.filmward.pipeline;

import dev.filmward.chart.LimitsVersion;
import dev.filmward.film.Characteristic;
import dev.filmward.gauge.calibration.FilmScalings;
import dev.filmward.gauge.calibration.Scaling;
import dev.filmward.pipeline.LimitsProposal.PastAlarm;
import dev.filmward.pipeline.RescalingPreview.Alarms;
import dev.filmward.pipeline.RescalingPreview.Mean;
import dev.filmward.store.FigureColumns;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.Tables;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/**
 * Does a re-scaling to see what comes of it; whoever calls it undoes the transaction. For one
 * thread.
 */
final class RescalingRehearsal {
  /** Alarms of more samples are not worked out beforehand. */
  private static final long MOST_JUDGED = 50_000;

  private final Tables tables;
  private final Production production;
  private final Rescaling order;
  private final Scaling scaling;

  RescalingRehearsal(Tables tables, Production production, Rescaling order, Scaling scaling) {
    this.tables = tables;
    this.production = production;
    this.order = order;
    this.scaling = scaling;
  }

  RescalingPreview run() {
    List<Integer> otherwise = otherwise();
    List<OptionalDouble> before = means();
    boolean isJudged = columns(Characteristic.total()).count() <= MOST_JUDGED;
    List<PastAlarm> alarms = isJudged ? alarms() : List.of();
    RescalingWork.Done done =
        new RescalingWork(tables, production, order.position()).keep(scaling, order.limits());
    List<OptionalDouble> after = means();
    List<Mean> means = new ArrayList<>();
    for (int i = 0; i < before.size(); i++) {
      means.add(new Mean(affected().get(i), before.get(i), after.get(i)));
    }
    return new RescalingPreview(
        scaling.steps(),
        done.samples(),
        done.left(),
        tables
            .samples()
            .countWithTemperature(
                production.line(), production.structure().code(), Span.since(done.from())),
        means,
        otherwise,
        isJudged ? Optional.of(new Alarms(alarms, alarms())) : Optional.empty());
  }

  private List<Characteristic> affected() {
    return production.characteristics().stream()
        .filter(each -> each.position() == order.position() || each.position() == 0)
        .toList();
  }

  private List<OptionalDouble> means() {
    return affected().stream().map(this::mean).toList();
  }

  private OptionalDouble mean(Characteristic characteristic) {
    FigureColumns columns = columns(characteristic);
    SeriesFigures figures = new SeriesFigures();
    for (int i = 0; i < columns.count(); i++) {
      if (columns.size(i) > 0) {
        figures.add(columns.size(i), columns.mean(i), columns.range(i));
      }
    }
    return figures.mean();
  }

  private FigureColumns columns(Characteristic characteristic) {
    return tables.figures().columns(production.series(characteristic), Span.since(order.from()));
  }

  private List<PastAlarm> alarms() {
    return PastAlarms.under(ProductionJudge.asKept(production, tables), production, order.from());
  }

  private List<Integer> otherwise() {
    FilmScalings film =
        tables
            .scalings()
            .of(production.line(), production.structure().code())
            .and(order.position(), scaling);
    TreeSet<Integer> otherwise = new TreeSet<>();
    for (Characteristic each : affected()) {
      List<LimitsVersion> versions = tables.limits().of(production.series(each));
      otherwise.addAll(ScaledLimits.of(tables, production.series(each), film).otherwise(versions));
    }
    return List.copyOf(otherwise);
  }
}
