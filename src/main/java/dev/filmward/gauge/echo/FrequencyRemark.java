package dev.filmward.gauge.echo;

import java.util.List;
import java.util.Optional;

/**
 * Whether the frequency is one that practice uses for layers of 1.5 to 2 mil. Of films without such
 * layers the range says little, so it is a note only. Stateless.
 */
final class FrequencyRemark {
  private static final String PRACTICE =
      "practice uses %.0f to %.0f MHz for layers of 1.5 to 2 mil (38 to 51 um), in contact and in"
          + " immersion ("
          + TradeThickness.PRACTICE
          + ").";

  private FrequencyRemark() {}

  static Optional<Remark> of(double mhz, List<ExpectedLayer> layers) {
    boolean concerns =
        layers.stream()
            .anyMatch(layer -> layer.nominalUm().stream().anyMatch(TradeThickness::isOfPractice));
    boolean isUsual = TradeThickness.isUsualFrequency(mhz);
    if (isUsual && !concerns) {
      return Optional.empty();
    }
    String words = (isUsual ? "%s MHz is usual here: " : "%s MHz: ") + PRACTICE;
    Object[] values = {plain(mhz), TradeThickness.LEAST_MHZ, TradeThickness.MOST_MHZ};
    return Optional.of(
        isUsual || !concerns
            ? Remark.note(Remark.GAUGE, words, values)
            : Remark.look(Remark.GAUGE, words, values));
  }

  private static String plain(double mhz) {
    return mhz == Math.rint(mhz) ? String.valueOf((long) mhz) : String.valueOf(mhz);
  }
}
