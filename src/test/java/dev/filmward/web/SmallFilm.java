package dev.filmward.web;

import java.time.Duration;
import java.time.Instant;
import java.util.Locale;

/**
 * An invented film of two layers, measured in five lanes, whose figures can be worked out by hand.
 *
 * <p>In each sample the lanes lie 0.4 um below to 0.4 um above the layer's mean, so that every
 * range is 0.8 um; means go up and down by 0.1 um, which no test minds. Immutable.
 *
 * @param first when sample 0 was taken
 * @param apart the time between two samples
 */
public record SmallFilm(String line, Instant first, Duration apart) {
  public static final String LINE = "Blown 1";
  public static final String CODE = "DUO-50";
  public static final int LANES = 5;
  public static final double SKIN_UM = 20;
  public static final double SEAL_UM = 30;
  public static final double RANGE_UM = 0.8;

  public static final String STRUCTURES =
      """
      structures:
        - code: DUO-50
          name: Two-layer film, 50 um
          layers:
            - name: Skin
              role: skin
              resin: LDPE
              target: 20 um
              lower: 17 um
              upper: 23 um
              density: 0.922
              extruder: A
            - name: Seal
              role: seal
              resin: mLLDPE
              target: 30 um
              lower: 27 um
              upper: 33 um
              density: 0.915
              extruder: B
          total: {target: 50 um, lower: 45 um, upper: 55 um}
      """;

  public static final String HEADER =
      "taken_at,line,structure,roll,sample,lane,layer_1_um,layer_2_um\n";

  private static final double SWING_UM = 0.1;
  private static final double[] LANE_UM = {-0.4, -0.2, 0, 0.2, 0.4};

  /** A film whose sample of that number was taken at a moment, with a minute between samples. */
  public static SmallFilm withSampleAt(int number, Instant moment) {
    Duration apart = Duration.ofMinutes(1);
    return new SmallFilm(LINE, moment.minus(apart.multipliedBy(number)), apart);
  }

  /** Samples that are as usual, {@code to} left out. */
  public String usual(int from, int to) {
    return thinnerSkin(from, to, 0);
  }

  /** Samples whose skin is thinner by so much. */
  public String thinnerSkin(int from, int to, double byUm) {
    StringBuilder csv = new StringBuilder(HEADER);
    for (int number = from; number < to; number++) {
      for (int lane = 0; lane < LANES; lane++) {
        double web = LANE_UM[lane] + (number % 2 == 0 ? SWING_UM : -SWING_UM);
        csv.append(rowHead(number, lane));
        csv.append(String.format(Locale.ROOT, ",%.3f", SKIN_UM + web - byUm));
        csv.append(String.format(Locale.ROOT, ",%.3f%n", SEAL_UM + web));
      }
    }
    return csv.toString();
  }

  /** A sample whose skin was not measured in any lane. */
  public String withoutSkin(int number) {
    StringBuilder csv = new StringBuilder(HEADER);
    for (int lane = 0; lane < LANES; lane++) {
      csv.append(rowHead(number, lane)).append(",,").append(SEAL_UM).append('\n');
    }
    return csv.toString();
  }

  public Instant takenAt(int number) {
    return first.plus(apart.multipliedBy(number));
  }

  public static String sample(int number) {
    return String.format(Locale.ROOT, "S%05d", number);
  }

  private String rowHead(int number, int lane) {
    return String.join(
        ",", takenAt(number).toString(), line, CODE, "R1", sample(number), "" + (lane + 1));
  }
}
