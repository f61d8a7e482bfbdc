package dev.filmward.intake;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Role;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Reads one structure from its node; notes what is wrong. One owner, one thread. */
final class StructureReader {
  private static final List<String> KEYS = List.of("code", "name", "layers", "total", "reported");
  private static final List<String> LIMIT_KEYS = List.of("lower", "target", "upper", "average");
  private static final List<String> AVERAGE_KEYS = List.of("lower", "target", "upper");
  private static final List<String> LAYER_KEYS =
      List.of(
          "name",
          "role",
          "resin",
          "target",
          "lower",
          "upper",
          "average",
          "density",
          "extruder",
          "velocity",
          "greatest");

  private final Faults faults;

  StructureReader(Faults faults) {
    this.faults = faults;
  }

  /** Empty where a fault keeps it from being made. */
  Optional<Structure> read(YamlNode node, int number) {
    Entries entries = Entries.of(node, placeOf(node, number), faults, KEYS);
    String code = entries.neededText("code");
    List<Layer> layers = layers(entries);
    List<ReportedLayer> reported = new GroupReader(entries, layers).read();
    SpecLimits total = SpecLimits.NONE;
    SpecLimits totalAverage = SpecLimits.NONE;
    Optional<YamlNode> totals = entries.node("total");
    if (totals.isPresent()) {
      Entries limits = Entries.of(totals.get(), entries.place() + ", total", faults, LIMIT_KEYS);
      total = limits.limits(SpecLimits.NONE);
      totalAverage = average(limits, SpecLimits.NONE);
    }
    String name = entries.text("name").orElse(code);
    return reported.isEmpty()
        ? Optional.empty()
        : Optional.of(new Structure(code, name, layers, reported, total, totalAverage));
  }

  /** The limits for averages that some entries give; a part not given is that of the base. */
  static SpecLimits average(Entries entries, SpecLimits base) {
    return entries
        .node("average")
        .map(
            node ->
                Entries.of(node, entries.place() + ", average", entries.faults(), AVERAGE_KEYS)
                    .limits(base))
        .orElse(base);
  }

  private static String placeOf(YamlNode node, int number) {
    return "structure " + named(node, "code").orElse("number " + number);
  }

  private static Optional<String> named(YamlNode node, String key) {
    return node instanceof YamlNode.Mapping mapping
            && mapping.values().get(key) instanceof YamlNode.Scalar scalar
            && !scalar.text().isEmpty()
        ? Optional.of(Words.cut(scalar.text()))
        : Optional.empty();
  }

  private List<Layer> layers(Entries structure) {
    List<Layer> layers = new ArrayList<>();
    if (structure.node("layers").orElse(null) instanceof YamlNode.Listing listing) {
      for (YamlNode node : listing.items()) {
        layers.add(layer(structure, node, layers.size() + 1));
      }
    }
    if (layers.isEmpty()) {
      structure.fault("layers", "there are none; list them from the outer face inwards");
    }
    return layers;
  }

  private Layer layer(Entries structure, YamlNode node, int number) {
    String place =
        structure.place()
            + ", layer "
            + number
            + named(node, "name").map(name -> " (" + name + ")").orElse("");
    Entries entries = Entries.of(node, place, faults, LAYER_KEYS);
    return new Layer(
        entries.neededText("name"),
        role(entries),
        entries.text("resin"),
        entries.limits(SpecLimits.NONE),
        average(entries, SpecLimits.NONE),
        entries.number("density"),
        entries.text("extruder"),
        entries.number("velocity"),
        entries.length("greatest"));
  }

  private static Role role(Entries entries) {
    String text = entries.neededText("role");
    Optional<Role> role =
        Arrays.stream(Role.values()).filter(r -> r.name().equalsIgnoreCase(text)).findFirst();
    if (role.isEmpty() && entries.text("role").isPresent()) {
      String roles =
          Arrays.stream(Role.values())
              .map(r -> r.name().toLowerCase(Locale.ROOT))
              .collect(Collectors.joining(", "));
      entries.fault("role", Words.quoted(text) + " is not a role; write one of " + roles);
    }
    return role.orElse(Role.CORE);
  }
}
