package dev.filmward.alarm;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Structure;
import java.util.stream.Collectors;

/** Says in words what an alarm is about. */
public final class AlarmTitle {
  private AlarmTitle() {}

  /** Which layers: {@code all layers}, or their names, or {@code total}. */
  public static String group(Subject subject, Structure structure) {
    long layers = subject.members().stream().filter(AlarmTitle::isLayer).count();
    if (layers == 0) {
      return "total";
    }
    if (layers > 1 && layers == structure.reported().size()) {
      return "all layers";
    }
    return subject.members().stream()
        .filter(AlarmTitle::isLayer)
        .map(Characteristic::name)
        .collect(Collectors.joining(", "));
  }

  /** For example {@code Inner tie: thinner than usual}. */
  public static String of(Subject subject, Structure structure) {
    String group = group(subject, structure);
    return Character.toUpperCase(group.charAt(0))
        + group.substring(1)
        + ": "
        + subject.deviation().words();
  }

  private static boolean isLayer(Characteristic characteristic) {
    return characteristic.kind() == Characteristic.Kind.LAYER;
  }
}
