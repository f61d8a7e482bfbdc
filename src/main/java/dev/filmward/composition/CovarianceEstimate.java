package dev.filmward.composition;

/** How the covariances of single vectors are estimated. */
public enum CovarianceEstimate {
  /** From the distances to the mean: of least variance if the baseline is in control. */
  SAMPLE,
  /**
   * From the differences between neighbours in time: steps and trends in the baseline widen it
   * little, so that they can be seen (D. S. Holmes and A. E. Mergen, Improving the performance of
   * the T2 control chart, Quality Engineering 5 (1993) 619).
   */
  SUCCESSIVE
}
