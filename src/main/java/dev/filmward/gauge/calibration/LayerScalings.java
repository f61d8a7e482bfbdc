package dev.filmward.gauge.calibration;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * All versions of how the readings of one reported layer are re-scaled. At a moment the newest
 * version counts that holds by then and was not taken back; where there is none, readings are as
 * exported. Immutable.
 */
public record LayerScalings(List<Scaling> versions) {
  public static final LayerScalings NONE = new LayerScalings(List.of());

  public LayerScalings {
    versions = List.copyOf(versions);
    for (int i = 0; i < versions.size(); i++) {
      if (versions.get(i).version() != i + 1) {
        throw new IllegalArgumentException("versions count from 1 without a gap");
      }
    }
  }

  /** How a reading taken at a moment is re-scaled. */
  public Scale at(Instant moment) {
    return stepAt(moment).map(ScaleStep::scale).orElse(Scale.AS_EXPORTED);
  }

  /** The step behind it; empty where readings are as exported. */
  public Optional<ScaleStep> stepAt(Instant moment) {
    return inForceAt(moment).flatMap(version -> version.at(moment));
  }

  /** The version behind it. */
  public Optional<Scaling> inForceAt(Instant moment) {
    Set<Integer> takenBack = takenBack();
    for (int i = versions.size() - 1; i >= 0; i--) {
      Scaling version = versions.get(i);
      if (!takenBack.contains(version.version()) && version.at(moment).isPresent()) {
        return Optional.of(version);
      }
    }
    return Optional.empty();
  }

  /** Whether any version corrects readings taken from a moment on by their temperature. */
  public boolean usesTemperatureSince(Instant moment) {
    return versions.stream()
        .flatMap(version -> version.steps().stream())
        .filter(step -> step.temperature().isPresent())
        .anyMatch(step -> stillHolds(step, moment));
  }

  private boolean stillHolds(ScaleStep step, Instant moment) {
    Instant seen = step.holdsFrom().isAfter(moment) ? step.holdsFrom() : moment;
    return stepAt(seen).filter(step::equals).isPresent();
  }

  /** What was known of it at a moment. */
  public LayerScalings asKnownAt(Instant moment) {
    return new LayerScalings(
        versions.stream().filter(each -> !each.word().at().isAfter(moment)).toList());
  }

  /** With one more version. */
  public LayerScalings and(Scaling next) {
    return new LayerScalings(Stream.concat(versions.stream(), Stream.of(next)).toList());
  }

  /** Versions that were taken back. */
  public Set<Integer> takenBack() {
    Set<Integer> takenBack = new HashSet<>();
    versions.stream().filter(Scaling::isBack).forEach(each -> takenBack.add(each.takesBack()));
    return takenBack;
  }

  /** The number that the next version gets. */
  public int next() {
    return versions.size() + 1;
  }
}
