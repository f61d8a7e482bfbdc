package dev.filmward.capability;

/** How the confidence limits of a Cpk with two specification limits are found. */
public enum CpkMethod {
  /**
   * The lower of the exact limits of Cpu and of Cpl, from the non-central t distribution. The
   * default: the lower limit is at or below the true Cpk with the stated confidence or more,
   * whatever n and wherever the mean; and it is exact when the mean is clearly nearer to one limit.
   * The price is caution when the mean is in the middle, where 95 % are up to 97.5 % in truth.
   */
  NEARER_LIMIT_EXACT,
  /**
   * Allows for a mean near the middle, where both limits bind and the exact limits of one are too
   * careful: from the distribution of the estimate at the offset that was estimated. Without a
   * guarantee: by simulation 95 % are 94 to 96.5 % in truth, wherever the mean. In the very middle
   * its lower limit may exceed that of Cp a little.
   */
  CENTRING_ESTIMATED,
  /**
   * A. F. Bissell, How reliable is your capability index?, Applied Statistics 39 (1990) 331:
   * symmetric about the estimate. For comparison with other reports; with few readings its lower
   * limit is too high.
   */
  NORMAL_APPROXIMATION
}
