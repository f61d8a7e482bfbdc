package dev.filmward.intake;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Reads an entry that is one of a few words: the constants of an enum. Stateless. */
final class Choice {
  private Choice() {}

  /** The constant that an entry names; what is none is noted as a fault. */
  static <E extends Enum<E>> Optional<E> of(Entries entries, String key, Class<E> type) {
    Optional<String> text = entries.text(key);
    List<E> all = List.of(type.getEnumConstants());
    Optional<E> found = text.flatMap(t -> all.stream().filter(e -> word(e).equals(t)).findFirst());
    if (text.isPresent() && found.isEmpty()) {
      entries.fault(key, Words.quoted(text.get()) + " is none of " + words(type));
    }
    return found;
  }

  /** The same, where one must be there; the other one where it is not. */
  static <E extends Enum<E>> E needed(Entries entries, String key, E otherwise) {
    if (entries.node(key).isEmpty()) {
      entries.fault(key, "is missing; write one of " + words(otherwise.getDeclaringClass()));
    }
    return of(entries, key, otherwise.getDeclaringClass()).orElse(otherwise);
  }

  /** How a constant is written: {@code windows-1252}. */
  static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static <E extends Enum<E>> String words(Class<E> type) {
    return String.join(", ", Arrays.stream(type.getEnumConstants()).map(Choice::word).toList());
  }
}
