package dev.filmward.gauge.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Readings of pieces whose thickness is known, as they come. Readings of a part with two different
 * references are two pieces. Mutable, for one thread.
 */
public final class ReferenceReadings {
  private final Map<String, Map<Key, List<Double>>> layers = new LinkedHashMap<>();

  private record Key(String part, double referenceUm) {}

  public void add(StudyReading reading, double referenceUm) {
    layers
        .computeIfAbsent(reading.layer(), layer -> new LinkedHashMap<>())
        .computeIfAbsent(new Key(reading.part(), referenceUm), key -> new ArrayList<>())
        .add(reading.um());
  }

  /** The layers that have such readings, in the order of the first ones. */
  public List<String> layers() {
    return List.copyOf(layers.keySet());
  }

  /** None where the layer has no such readings. */
  public List<ReferencePiece> pieces(String layer) {
    List<ReferencePiece> pieces = new ArrayList<>();
    layers
        .getOrDefault(layer, Map.of())
        .forEach((key, um) -> pieces.add(new ReferencePiece(key.part(), key.referenceUm(), um)));
    return List.copyOf(pieces);
  }
}
