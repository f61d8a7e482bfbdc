package dev.filmward.gauge;

/**
 * A pulse-echo thickness gauge, or one probe of it. Immutable.
 *
 * @param name the serial name that the plant gave it, as on its label
 * @param centreMhz centre frequency of the probe's pulse, MHz
 * @param bandwidth width of the pulse's spectrum at half height (-6 dB) as a share of the centre
 *     frequency: 0.6 for 60 %
 */
public record Gauge(String name, double centreMhz, double bandwidth) {
  private static final int LONGEST_NAME = 60;
  private static final double GREATEST_MHZ = 1000;
  private static final double GREATEST_BANDWIDTH = 2;

  public Gauge {
    if (name.isBlank() || name.length() > LONGEST_NAME) {
      throw new IllegalArgumentException(
          "a gauge needs a name of at most " + LONGEST_NAME + " characters, as on its label");
    }
    if (!(centreMhz > 0 && centreMhz <= GREATEST_MHZ)) {
      throw new IllegalArgumentException(
          "the frequency of gauge \""
              + name
              + "\" is in MHz, above 0 up to 1000, not "
              + centreMhz);
    }
    if (!(bandwidth > 0 && bandwidth <= GREATEST_BANDWIDTH)) {
      throw new IllegalArgumentException(
          "the bandwidth of gauge \""
              + name
              + "\" is a share of its frequency, above 0 up to 2 (0.6 for 60 %), not "
              + bandwidth);
    }
  }
}
