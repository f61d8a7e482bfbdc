package dev.filmward.diagnosis;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * One thing that changed, whatever the reason.
 *
 * @param positions reported layers concerned, from 1; empty where it is all of them or no layer
 * @param since empty where a beginning cannot be told
 * @param moves of all layers and the total, for a step or drift; else empty
 * @param lanes that stand out, as the gauge numbers them; else empty
 * @param boundaries that the change began at, within a sample
 * @param words a sentence or two with the figures
 */
public record Observation(
    Shape shape,
    List<Integer> positions,
    Optional<Since> since,
    List<LayerMove> moves,
    List<Integer> lanes,
    List<Boundary> boundaries,
    String words) {

  /** What a change looks like. */
  public enum Shape {
    STEP(Facet.LEVEL),
    DRIFT(Facet.LEVEL),
    SHORT(Facet.SHORT),
    PERIODIC(Facet.PERIODIC),
    DAILY(Facet.DAILY),
    PROFILE(Facet.LANES),
    SCATTER(Facet.SCATTER),
    READINGS(Facet.READINGS);

    private final Facet facet;

    Shape(Facet facet) {
      this.facet = facet;
    }

    public Facet facet() {
      return facet;
    }

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  public Observation {
    positions = List.copyOf(positions);
    moves = List.copyOf(moves);
    lanes = List.copyOf(lanes);
    boundaries = List.copyOf(boundaries);
  }
}
