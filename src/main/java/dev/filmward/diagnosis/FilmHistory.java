package dev.filmward.diagnosis;

import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import java.time.Instant;
import java.util.List;

/**
 * What is known of a film around an alarm: the evidence that a diagnosis is made from. Immutable.
 *
 * <p>The window should begin at least {@value #FEWEST_BEFORE} samples before the deviation, better
 * a hundred, and end now or where the excursion ended. All samples are of one line and structure.
 * Roll changes are seen from the samples' keys and need not be given as boundaries.
 *
 * @param samples in time order; flagged ones too
 * @param alarmedAt when the alarm was opened: what is looked for began at or before it
 * @param reference one for each reported layer, or empty: then the window's first part is taken
 */
public record FilmHistory(
    Structure structure,
    List<Sample> samples,
    Instant alarmedAt,
    List<LayerReference> reference,
    List<Boundary> boundaries,
    List<GaugeFlag> flags) {
  /** With fewer samples before the change nothing can be said about it. */
  public static final int FEWEST_BEFORE = 20;

  public FilmHistory {
    samples = List.copyOf(samples);
    reference = List.copyOf(reference);
    boundaries = List.copyOf(boundaries);
    flags = List.copyOf(flags);
    int layers = structure.reported().size();
    for (int i = 0; i < samples.size(); i++) {
      Sample sample = samples.get(i);
      if (sample.layers() != layers) {
        throw new IllegalArgumentException(
            sample + " has " + sample.layers() + " layers; the structure reports " + layers);
      }
      if (i > 0 && sample.takenAt().isBefore(samples.get(i - 1).takenAt())) {
        throw new IllegalArgumentException(sample + " is before the one before it");
      }
    }
    checkReference(reference, layers);
  }

  private static void checkReference(List<LayerReference> reference, int layers) {
    if (!reference.isEmpty() && reference.size() != layers) {
      throw new IllegalArgumentException(
          reference.size() + " references for " + layers + " reported layers; give all or none");
    }
    for (int i = 0; i < reference.size(); i++) {
      if (reference.get(i).position() != i + 1) {
        throw new IllegalArgumentException("references come in the order of the layers");
      }
    }
  }

  /** Samples alone, with nothing else known. */
  public static FilmHistory of(Structure structure, List<Sample> samples, Instant alarmedAt) {
    return new FilmHistory(structure, samples, alarmedAt, List.of(), List.of(), List.of());
  }

  public FilmHistory withReference(List<LayerReference> usual) {
    return new FilmHistory(structure, samples, alarmedAt, usual, boundaries, flags);
  }

  public FilmHistory withBoundaries(List<Boundary> known) {
    return new FilmHistory(structure, samples, alarmedAt, reference, known, flags);
  }

  public FilmHistory withFlags(List<GaugeFlag> set) {
    return new FilmHistory(structure, samples, alarmedAt, reference, boundaries, set);
  }
}
