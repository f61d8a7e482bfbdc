package dev.filmward.capability;

/**
 * How the confidence limits of a Cpk with two specification limits are found. In how many of 100
 * weeks a lower limit at 95 % holds in truth, by simulation at 30, 100 and 300 readings:
 *
 * <pre>
 *   mean off the middle by (standard errors)    0             0.5          1 to 2        3 and more
 *   NEARER_LIMIT_EXACT                    97.2 to 97.7  96.3 to 96.8  94.8 to 96.0   94.7 to 95.2
 *   CENTRING_ESTIMATED                    96.1 to 96.5  94.8 to 95.2  94.0 to 94.6   94.5 to 95.1
 * </pre>
 */
public enum CpkMethod {
  /**
   * The lower of the exact limits of Cpu and of Cpl, from the non-central t distribution. It is at
   * or below the true Cpk with the stated confidence or more, whatever n and wherever the mean, and
   * exact when the mean is clearly nearer to one limit. The price is caution when the mean is in
   * the middle, where it asks for more readings than it says.
   */
  NEARER_LIMIT_EXACT,
  /**
   * The default. Allows for a mean near the middle, where both limits bind and the exact limits of
   * one are too careful: from the distribution of the estimate at the offset that was estimated.
   * Once the mean is three standard errors off the middle it is the exact limit of the nearer side.
   *
   * <p>It is the default because a film is run to its target, so that the middle is the usual case,
   * and there it is nearer to what it says. The price: one week in a hundred more than stated may
   * be claimed too much when the mean is 1 to 2 standard errors off, and in the very middle the
   * limit may exceed that of Cp a little. Where a guarantee is asked for, take {@link
   * #NEARER_LIMIT_EXACT}.
   */
  CENTRING_ESTIMATED,
  /**
   * A. F. Bissell, How reliable is your capability index?, Applied Statistics 39 (1990) 331:
   * symmetric about the estimate. For comparison with other reports; with few readings its lower
   * limit is too high.
   */
  NORMAL_APPROXIMATION;

  /** See {@link #CENTRING_ESTIMATED} for the reason. */
  static final CpkMethod DEFAULT = CENTRING_ESTIMATED;
}
