package dev.filmward.intake;

import dev.filmward.film.Length;
import dev.filmward.film.SpecLimits;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;

/**
 * The entries of one mapping of keys in a YAML file, and where it stands.
 *
 * <p>Whatever is wrong is noted as a fault and taken as not given, so that reading can go on to the
 * next fault; what was read is of no use then. One owner, one thread.
 */
final class Entries {
  private final YamlNode.Mapping mapping;
  private final String place;
  private final Faults faults;

  private Entries(YamlNode.Mapping mapping, String place, Faults faults) {
    this.mapping = mapping;
    this.place = place;
    this.faults = faults;
  }

  /** Takes a node as a mapping, and notes every key that is not among those known. */
  static Entries of(YamlNode node, String place, Faults faults, List<String> known) {
    if (!(node instanceof YamlNode.Mapping mapping)) {
      faults.add(
          node.line(),
          place + ": " + node.words() + " stands where there should be keys: " + Words.some(known));
      // one fault is enough: what is missing from it is not noted
      YamlNode.Mapping empty = new YamlNode.Mapping(node.line(), Map.of(), Map.of());
      return new Entries(empty, place, new Faults(""));
    }
    for (String key : mapping.values().keySet()) {
      if (!known.contains(key)) {
        String instead =
            Nearest.to(key, known)
                .map(name -> "the nearest key is " + Words.quoted(name))
                .orElseGet(() -> "known keys are " + Words.some(known));
        faults.add(
            mapping.keyLine(key),
            place + ": " + Words.quoted(key) + " is not a known key; " + instead);
      }
    }
    return new Entries(mapping, place, faults);
  }

  String place() {
    return place;
  }

  Faults faults() {
    return faults;
  }

  Optional<YamlNode> node(String key) {
    return Optional.ofNullable(mapping.values().get(key));
  }

  /** Notes what is wrong with an entry, or with its absence. */
  void fault(String key, String message) {
    int line = mapping.keyLine(key);
    faults.add(line, place + ", " + key + ": " + message);
  }

  Optional<String> text(String key) {
    Optional<YamlNode> node = node(key);
    if (node.isEmpty()) {
      return Optional.empty();
    }
    if (node.get() instanceof YamlNode.Scalar scalar && !scalar.text().isEmpty()) {
      return Optional.of(scalar.text());
    }
    fault(key, node.get().words() + " stands where there should be a text");
    return Optional.empty();
  }

  /** Some texts: a list of them, or one by itself. */
  List<String> texts(String key) {
    Optional<YamlNode> node = node(key);
    if (!(node.orElse(null) instanceof YamlNode.Listing listing)) {
      return text(key).stream().toList();
    }
    List<String> texts = new ArrayList<>();
    for (YamlNode item : listing.items()) {
      if (item instanceof YamlNode.Scalar scalar) {
        texts.add(scalar.text());
      } else {
        fault(key, item.words() + " stands in the list where there should be a text");
      }
    }
    return texts;
  }

  /** Texts by keys of any name. */
  Map<String, String> textsByName(String key) {
    Map<String, String> texts = new LinkedHashMap<>();
    if (node(key).orElse(null) instanceof YamlNode.Mapping named) {
      named.values().forEach((name, value) -> put(key, name, value, texts));
    } else {
      node(key).ifPresent(node -> fault(key, node.words() + " stands where there should be pairs"));
    }
    return texts;
  }

  private void put(String key, String name, YamlNode value, Map<String, String> texts) {
    if (value instanceof YamlNode.Scalar scalar && !scalar.text().isEmpty()) {
      texts.put(name, scalar.text());
    } else {
      fault(key, Words.quoted(name) + " stands for nothing; write what it means");
    }
  }

  /** A text that must be there; something harmless where it is not. */
  String neededText(String key) {
    if (node(key).isEmpty()) {
      fault(key, "is missing; every structure and every layer needs one");
    }
    return text(key).orElse(place);
  }

  /** A number above zero, without a unit. */
  OptionalDouble number(String key) {
    Optional<String> text = text(key);
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    Decimals decimals = new Decimals();
    boolean isNumber =
        text.get().indexOf(',') < 0 && decimals.read(text.get()) == Decimals.Kind.NUMBER;
    if (!isNumber || !(decimals.value() > 0)) {
      fault(
          key,
          Words.quoted(text.get())
              + " is not a number above zero; write it with a decimal point and without a unit");
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(decimals.value());
  }

  /** A length above zero, um. */
  OptionalDouble length(String key) {
    return length(key, um -> um > 0, "above zero");
  }

  /** Target and limits; a part that is not given here is that of the base. */
  SpecLimits limits(SpecLimits base) {
    OptionalDouble lower = length("lower", um -> um >= 0, "zero or above");
    OptionalDouble target = length("target");
    OptionalDouble upper = length("upper");
    lower = lower.isPresent() ? lower : base.lower();
    target = target.isPresent() ? target : base.target();
    upper = upper.isPresent() ? upper : base.upper();
    if (lower.isPresent() && upper.isPresent() && !(lower.getAsDouble() < upper.getAsDouble())) {
      fault(
          "lower",
          lower.getAsDouble()
              + " um is not below the upper limit of "
              + upper.getAsDouble()
              + " um");
      return base;
    }
    return new SpecLimits(lower, target, upper);
  }

  private OptionalDouble length(String key, DoublePredicate range, String words) {
    Optional<String> text = text(key);
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    try {
      double um = Length.parse(text.get()).micrometres();
      if (range.test(um)) {
        return OptionalDouble.of(um);
      }
      fault(key, Words.quoted(text.get()) + " is not " + words);
    } catch (IllegalArgumentException e) {
      fault(key, String.valueOf(e.getMessage()));
    }
    return OptionalDouble.empty();
  }
}
