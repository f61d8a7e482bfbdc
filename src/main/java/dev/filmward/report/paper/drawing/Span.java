package dev.filmward.report.paper.drawing;

import java.util.ArrayList;
import java.util.List;

/**
 * An axis: values from {@code from} to {@code to}, drawn from one place to another, in points.
 * Values beyond are drawn beyond. Immutable.
 */
record Span(double from, double to, double fromPt, double toPt) {
  private static final double[] STEPS = {1, 2, 2.5, 5, 10};

  Span {
    if (!(from < to)) {
      throw new IllegalArgumentException("an axis runs from low to high: " + from + ", " + to);
    }
  }

  /** Around what there is, with some air; around one value where all are equal. */
  static Span around(Extent extent, double fromPt, double toPt) {
    double middle = extent.isEmpty() ? 0.5 : (extent.low() + extent.high()) / 2;
    double half = extent.isEmpty() ? 0.5 : (extent.high() - extent.low()) / 2;
    double reach = half > 0 ? half * 1.12 : Math.max(Math.abs(middle) * 0.05, 0.5);
    return new Span(middle - reach, middle + reach, fromPt, toPt);
  }

  double at(double value) {
    return fromPt + (value - from) / (to - from) * (toPt - fromPt);
  }

  boolean holds(double value) {
    return value >= from && value <= to;
  }

  /** Round values within, about as many as asked for. */
  List<Double> ticks(int about) {
    double step = step(about);
    List<Double> ticks = new ArrayList<>();
    for (double k = Math.ceil(from / step); k * step <= to; k++) {
      ticks.add(k * step);
    }
    return ticks;
  }

  /** Decimals that tell the ticks apart. */
  int decimals(int about) {
    int decimals = 0;
    double step = step(about);
    while (decimals < 6 && Math.abs(step - Math.rint(step)) > 1e-6) {
      step *= 10;
      decimals++;
    }
    return decimals;
  }

  private double step(int about) {
    double rough = (to - from) / about;
    double power = Math.pow(10, Math.floor(Math.log10(rough)));
    for (double step : STEPS) {
      if (step * power >= rough) {
        return step * power;
      }
    }
    return 10 * power;
  }
}
