package dev.filmward.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Two weeks of film beside each other: two weeks, lines or structures. Characteristics belong
 * together by kind and place. Immutable.
 *
 * <p>Whether two Ppk differ: z = difference over the root of the sum of their variances, each from
 * its 95 % interval of normal form, beyond 1.96 (A. F. Bissell, How reliable is your capability
 * index?, Applied Statistics 39 (1990) 331, for the interval).
 */
public record FilmComparison(FilmWeek first, FilmWeek second, List<Pair> pairs) {
  private static final double Z = 1.959963984540054;

  public FilmComparison {
    pairs = List.copyOf(pairs);
  }

  /**
   * One characteristic in both.
   *
   * @param z of the difference of Ppk, second less first; empty where one of them has no interval
   */
  public record Pair(CharacteristicWeek first, CharacteristicWeek second, OptionalDouble z) {
    /** Whether the difference is more than chance makes, at 5 %. */
    public boolean differs() {
      return z.isPresent() && Math.abs(z.getAsDouble()) > Z;
    }
  }

  public static FilmComparison of(FilmWeek first, FilmWeek second) {
    List<Pair> pairs = new ArrayList<>();
    for (CharacteristicWeek one : first.characteristics()) {
      second.characteristics().stream()
          .filter(other -> other.kind() == one.kind() && other.position() == one.position())
          .findFirst()
          .ifPresent(other -> pairs.add(new Pair(one, other, z(one.index(), other.index()))));
    }
    return new FilmComparison(first, second, pairs);
  }

  private static OptionalDouble z(IndexWeek first, IndexWeek second) {
    Optional<Double> one = variance(first);
    Optional<Double> other = variance(second);
    if (one.isEmpty() || other.isEmpty() || !(one.get() + other.get() > 0)) {
      return OptionalDouble.empty();
    }
    double difference = second.ppk().orElseThrow() - first.ppk().orElseThrow();
    return OptionalDouble.of(difference / Math.sqrt(one.get() + other.get()));
  }

  private static Optional<Double> variance(IndexWeek index) {
    if (index.ppk().isEmpty() || index.from().isEmpty() || index.to().isEmpty()) {
      return Optional.empty();
    }
    double deviation = (index.to().getAsDouble() - index.from().getAsDouble()) / (2 * Z);
    return Optional.of(deviation * deviation);
  }
}
