package dev.filmward.composition;

import java.util.List;

/**
 * What the distance of a sample is made of. A large term by itself and a small one given the others
 * means that all moved together; a large one given the others only, that it does not fit them.
 * Immutable.
 *
 * @param terms of the total, then of each layer in order
 * @param aloneLimit limit of the square of a term by itself, for samples of this phase
 * @param givenOthersLimit limit of a term given the others, for samples of this phase
 * @param behind what is behind the distance: positions of layers, the most telling first, then
 *     {@link #TOTAL} where the film is thicker or thinner; empty where nothing is unusual
 */
public record Decomposition(
    double tSquared,
    List<Term> terms,
    double aloneLimit,
    double givenOthersLimit,
    List<Integer> behind) {

  /** In the place of a layer's position. */
  public static final int TOTAL = 0;

  public Decomposition {
    terms = List.copyOf(terms);
    behind = List.copyOf(behind);
  }

  /**
   * A term.
   *
   * @param position of a layer from 1, or {@link #TOTAL}
   * @param zAlone how far the total, or the ratio of the layer to the geometric mean of all other
   *     layers, is off by itself, in standard deviations; above 0 is thicker
   * @param givenOthers what the distance would lose without it: a squared distance, not negative
   *     but for rounding
   */
  public record Term(int position, double zAlone, double givenOthers) {}

  /** The term of a layer by its position, or of the total. */
  public Term term(int position) {
    return terms.get(position);
  }

  /** Whether a term by itself is beyond its limit. */
  public boolean isBeyondAlone(Term term) {
    return term.zAlone * term.zAlone > aloneLimit;
  }

  /** Whether a term does not fit the others. */
  public boolean isBeyondGivenOthers(Term term) {
    return term.givenOthers > givenOthersLimit;
  }
}
