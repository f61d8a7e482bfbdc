package dev.filmward.drift;

/**
 * The inner product of two sequences in the metric of first-order autoregressive noise, for any
 * coefficient phi: {@code a' V^-1 b} where V holds {@code phi^|i-j| / (1 - phi^2)}. With the sums
 * kept here it is {@code (1 + phi^2) plain - phi lagged - phi^2 ends}. Immutable.
 *
 * <p>Source: G. E. P. Box, G. M. Jenkins and G. C. Reinsel, Time Series Analysis, 3rd ed. (1994),
 * appendix A7.4; S. J. Prais and C. B. Winsten, Trend estimators and serial correlation (1954).
 *
 * @param plain sum of {@code a_t b_t}
 * @param lagged sum of {@code a_t b_(t-1) + a_(t-1) b_t}
 * @param ends first product plus last one
 */
record Ar1Product(double plain, double lagged, double ends) {

  static Ar1Product of(double[] a, double[] b) {
    return of(a, b, 0);
  }

  /** Where {@code a} is 0 before the index {@code from}. */
  static Ar1Product of(double[] a, double[] b, int from) {
    int n = a.length;
    double plain = a[from] * b[from];
    double lagged = from == 0 ? 0 : a[from] * b[from - 1];
    for (int t = from + 1; t < n; t++) {
      plain += a[t] * b[t];
      lagged += a[t] * b[t - 1] + a[t - 1] * b[t];
    }
    return new Ar1Product(plain, lagged, a[0] * b[0] + a[n - 1] * b[n - 1]);
  }

  double at(double phi) {
    return (1 + phi * phi) * plain - phi * lagged - phi * phi * ends;
  }
}
