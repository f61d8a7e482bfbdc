package dev.filmward.pipeline;

import dev.filmward.film.Characteristic;
import dev.filmward.gauge.calibration.LayerScalings;
import dev.filmward.gauge.calibration.ScaleStep;
import dev.filmward.gauge.calibration.Scaling;
import dev.filmward.pipeline.Rescaling.LimitsToo;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.Comparator;

/**
 * Keeps one more version of how a layer is re-scaled, works the figures out again from the moment
 * from which it matters, and carries limits along where that is wanted. Alarms are whoever calls it
 * to judge again. Within one transaction, for one thread.
 */
final class RescalingWork {
  private final Tables tables;
  private final Production production;
  private final int position;

  RescalingWork(Tables tables, Production production, int position) {
    this.tables = tables;
    this.production = production;
    this.position = position;
  }

  /**
   * What was done.
   *
   * @param from the moment from which readings are another
   * @param samples worked out again
   * @param left samples without readings, whose figures stay as they were
   * @param carried versions of limits that got a successor
   */
  record Done(Instant from, long samples, long left, int carried) {}

  /** What there is so far. */
  LayerScalings known() {
    return tables.scalings().of(production.line(), production.structure().code()).of(position);
  }

  Done keep(Scaling scaling, LimitsToo limits) {
    LayerScalings before = known();
    LayerScalings after = before.and(scaling);
    Instant from = from(before, scaling);
    if (limits == LimitsToo.CARRY
        && (before.usesTemperatureSince(from) || after.usesTemperatureSince(from))) {
      throw new IllegalArgumentException(
          "limits cannot be carried along where readings are corrected by temperature, since each"
              + " of them moves by another amount; leave the limits, and propose new ones once"
              + " enough samples are there");
    }
    tables.scalings().add(layer(), scaling);
    tables.audit().add(Audited.rescaled(production, position, scaling));
    Series total = production.series(Characteristic.total());
    LongWork.current().more(tables.figures().columns(total, Span.since(from)).count());
    Refiguring refiguring = new Refiguring(tables);
    long samples = refiguring.run(production, Span.since(from));
    int carried =
        limits == LimitsToo.CARRY
            ? new CarriedLimits(tables, production, position, scaling.word())
                .carry(from, before, after)
            : 0;
    return new Done(from, samples, refiguring.left(), carried);
  }

  private Series layer() {
    return new Series(production.line(), production.structure().code(), position);
  }

  private static Instant from(LayerScalings before, Scaling scaling) {
    Scaling changing = scaling.isBack() ? before.versions().get(scaling.takesBack() - 1) : scaling;
    return changing.steps().stream()
        .map(ScaleStep::holdsFrom)
        .min(Comparator.naturalOrder())
        .orElseThrow();
  }
}
