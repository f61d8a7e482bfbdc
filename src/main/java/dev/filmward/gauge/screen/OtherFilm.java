package dev.filmward.gauge.screen;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The film is one of another structure that is known: its targets are read, and where it has fewer
 * layers the last places stay blank. Immutable.
 */
record OtherFilm(int layers, HeardFilm other) implements Misreading {

  /** Whether all that is compared of the other one is known. */
  static boolean isComparable(HeardFilm other) {
    return IntStream.rangeClosed(1, other.layers())
        .allMatch(position -> other.targetNs(position) > 0);
  }

  @Override
  public Misread kind() {
    return Misread.OTHER_FILM;
  }

  @Override
  public List<Integer> positions() {
    return IntStream.rangeClosed(1, layers).boxed().toList();
  }

  @Override
  public double[] exportedNs(double[] filmNs, double[] readNs) {
    double[] exported = new double[layers];
    Arrays.fill(exported, Double.NaN);
    for (int position = 1; position <= Math.min(layers, other.layers()); position++) {
      exported[position - 1] = other.targetNs(position);
    }
    return exported;
  }

  @Override
  public double rarity() {
    return 2;
  }

  @Override
  public boolean isOfTheWholeSample() {
    return true;
  }

  @Override
  public String words() {
    return "The readings are those of structure " + other.code();
  }
}
