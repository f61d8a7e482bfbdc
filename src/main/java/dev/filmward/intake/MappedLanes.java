package dev.filmward.intake;

import dev.filmward.film.SampleKey;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Gives the lane of a row: as it is written, with a word before the number or without, or counted
 * from 1 as the rows of a sample (and of a layer, where each row has one) follow each other. A
 * sample whose rows lie apart cannot be counted. One owner, one thread; counting keeps the keys of
 * all samples.
 */
final class MappedLanes {
  static final int NONE = -1;
  static final int GREATEST = 99_999;

  private static final Pattern LANE =
      Pattern.compile("[\\p{L} .#_-]{0,40}?\\s*([0-9]{1,5})(?:[.,]0*)?");

  private final Map<Integer, Integer> countByLayer = new HashMap<>();
  private final Set<SampleKey> seen = new HashSet<>();
  private SampleKey current = new SampleKey("", "", "", "");
  private boolean liesApart;

  /** The lane that a text names, or NONE. */
  static int read(String text) {
    Matcher matcher = LANE.matcher(text);
    boolean isNegative = text.startsWith("-");
    return matcher.matches() && !isNegative ? Integer.parseInt(matcher.group(1)) : NONE;
  }

  /** The lane of the next row of a sample and layer, or NONE. */
  int next(SampleKey key, int layer) {
    if (!key.equals(current)) {
      current = key;
      countByLayer.clear();
      liesApart = !seen.add(key);
    }
    int lane = countByLayer.merge(layer, 1, Integer::sum);
    return liesApart || lane > GREATEST ? NONE : lane;
  }
}
