package dev.filmward.simulate;

/**
 * A screen pack fills up and its extruder delivers a little less at each sample; then the screen is
 * changed, the layer is back where it was, and after a time it begins again.
 *
 * @param from the first sample that is thinner
 * @param perSample fraction of the undisturbed thickness that is lost at each sample
 * @param blinding how many samples until the screen is changed
 * @param clean how many samples are undisturbed after the change
 */
record ScreenBlinding(int from, Reach reach, double perSample, int blinding, int clean)
    implements Event {

  ScreenBlinding {
    if (!(blinding >= 1) || !(clean >= 0) || !(perSample > 0 && perSample * blinding < 1)) {
      throw new IllegalArgumentException(
          "a layer cannot lose " + perSample + " of itself in each of " + blinding + " samples");
    }
  }

  @Override
  public double factor(int sample, int position, int lane) {
    if (sample < from) {
      return 1;
    }
    int phase = (sample - from) % (blinding + clean);
    return phase < blinding ? 1 - reach.weight(position) * perSample * (phase + 1) : 1;
  }
}
