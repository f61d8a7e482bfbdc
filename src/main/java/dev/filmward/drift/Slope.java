package dev.filmward.drift;

import java.util.Optional;

/**
 * The straight line through all means that a series holds: how fast they rise or fall, with an
 * uncertainty that allows for neighbouring samples being alike.
 *
 * <p>Generalised least squares with first-order autoregressive noise from sample to sample; the
 * line is over time, so gaps count in full. Immutable.
 *
 * <p>Source: S. J. Prais and C. B. Winsten, Trend estimators and serial correlation (1954), with
 * the corrections named at {@link Regression} and {@link LongRun}.
 *
 * @param perHour in the unit of the means
 * @param lag1 autocorrelation of the noise around the line
 */
public record Slope(Estimate perHour, double lag1) {
  /** With fewer samples an interval would pretend to know more than it does. */
  public static final int FEWEST_SAMPLES = 30;

  private static final int PARAMETERS = 2;

  /** Empty for fewer than {@value #FEWEST_SAMPLES} samples or no time between them. */
  public static Optional<Slope> of(MeanSeries series) {
    if (series.size() < FEWEST_SAMPLES) {
      return Optional.empty();
    }
    Window window = new Window(series);
    return window.spanHours() > 0 ? Optional.of(of(window)) : Optional.empty();
  }

  private static Slope of(Window window) {
    if (window.isFlat()) {
      return new Slope(Estimate.symmetric(0, 0), 0);
    }
    int n = window.size();
    LineFit fit = Shape.regression(window, Shape.RAMP.regressor(window, 0), 0).fit(PARAMETERS);
    double variance = fit.squares() / (n - PARAMETERS) * fit.factors().rate();
    double reach = LongRun.quantile(n, PARAMETERS, fit.phi()) * Math.sqrt(variance);
    double span = window.spanHours();
    return new Slope(Estimate.symmetric(fit.rate() / span, reach / span), fit.phi());
  }
}
