package dev.filmward.gauge.screen;

import java.util.Arrays;

/**
 * Readings of all layers at one place, or of a whole sample, weighed: how surprising they are as
 * the process, and as a misreading. In natural logarithms of odds. Immutable.
 */
final class Weighing {
  /** A reading is blank one time in a hundred. */
  private static final double BLANK = Math.log(100);

  /** A gauge that lost a layer has nothing to say in its place. */
  private static final double NOT_BLANK = 12;

  /** A feeder may run empty, which explains one layer however thin. */
  private static final double DROPOUT = 8;

  /** What should be read beyond that fraction of the range may be read at its end. */
  private static final double JUST_BELOW = 0.95;

  private final double[] readNs;
  private final double[] filmNs;
  private final double[] noise;
  private final double[] greatestNs;
  private final double blank;

  /**
   * @param readNs as read; NaN where blank, infinite where at the range end
   * @param filmNs what is usual; known for all layers
   * @param noise relative standard deviations of readings
   * @param greatestNs the range ends
   * @param lanes how many of them were blank together, where any was
   */
  Weighing(double[] readNs, double[] filmNs, double[] noise, double[] greatestNs, int lanes) {
    this.greatestNs = greatestNs;
    this.readNs = readNs;
    this.filmNs = filmNs;
    this.noise = noise;
    this.blank = BLANK * Math.max(1, Math.min(3, lanes));
  }

  double asProcess() {
    double[] deviations = deviations(filmNs);
    double common = median(deviations);
    return Math.min(process(deviations, 0), process(deviations, common)) + blanks(filmNs);
  }

  private double process(double[] deviations, double common) {
    double sum = common == 0 ? 0 : Surprise.of(common, 0);
    double greatestDown = 0;
    for (int i = 0; i < deviations.length; i++) {
      if (!Double.isNaN(deviations[i])) {
        double deviation = deviations[i] - common;
        double surprise = Surprise.of(deviation, noise[i]);
        sum += surprise;
        greatestDown = deviation < 0 ? Math.max(greatestDown, surprise) : greatestDown;
      }
    }
    return sum - Math.max(0, greatestDown - DROPOUT);
  }

  double as(Misreading misreading) {
    double[] exported = misreading.exportedNs(filmNs, readNs);
    double[] deviations = deviations(exported);
    double common = median(deviations);
    return misreading.rarity()
        + blanks(exported)
        + Math.min(misread(deviations, 0), misread(deviations, common));
  }

  private double misread(double[] deviations, double common) {
    double sum = common == 0 ? 0 : Surprise.of(common, 0);
    for (int i = 0; i < deviations.length; i++) {
      sum += Double.isNaN(deviations[i]) ? 0 : Surprise.of(deviations[i] - common, noise[i]);
    }
    return sum;
  }

  /** NaN where there is nothing to compare. */
  private double[] deviations(double[] expectedNs) {
    double[] deviations = new double[readNs.length];
    for (int i = 0; i < readNs.length; i++) {
      boolean isRead = readNs[i] < Double.POSITIVE_INFINITY;
      deviations[i] = isRead ? Math.log(readNs[i] / expectedNs[i]) : Double.NaN;
    }
    return deviations;
  }

  /** What blanks, and readings in the place of blanks, cost. */
  private double blanks(double[] exported) {
    double sum = 0;
    for (int i = 0; i < exported.length; i++) {
      boolean isRead = readNs[i] < Double.POSITIVE_INFINITY;
      boolean isBeyond = exported[i] > JUST_BELOW * greatestNs[i] && !Double.isNaN(readNs[i]);
      if (Double.isNaN(exported[i])) {
        sum += isRead ? NOT_BLANK : 0;
      } else {
        sum += isRead || isBeyond ? 0 : blank;
      }
    }
    return sum;
  }

  /** 0 where nothing was read. */
  private static double median(double[] deviations) {
    double[] read = Arrays.stream(deviations).filter(value -> !Double.isNaN(value)).toArray();
    return read.length == 0 ? 0 : Middle.of(read);
  }
}
