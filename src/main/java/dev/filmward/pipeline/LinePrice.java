package dev.filmward.pipeline;

import dev.filmward.rule.price.Price;
import dev.filmward.rule.price.PriceChange;
import java.time.Duration;
import java.util.List;

/**
 * What the tests in use cost on a line, at the pace at which it was sampled.
 *
 * @param characteristics how many are charted, each by its mean and its range
 * @param interval the median time between samples
 * @param changes what dropping or adding each test would do
 */
public record LinePrice(
    String line,
    String structure,
    int characteristics,
    Duration interval,
    Price price,
    List<PriceChange> changes) {
  /** A shift, for false alarms a shift (common practice, no source). */
  public static final Duration SHIFT = Duration.ofHours(8);

  public LinePrice {
    changes = List.copyOf(changes);
  }
}
