package dev.filmward.simulate;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * Writes a structure as a structures file, lengths in um. Names are written as they are, so they
 * must be plain words: letters, digits, spaces and hyphens.
 */
final class StructureYaml {
  private final StringBuilder text = new StringBuilder("structures:\n");

  private StructureYaml() {}

  static String of(Structure structure) {
    StructureYaml yaml = new StructureYaml();
    yaml.line("  - code: " + structure.code());
    yaml.line("    name: " + structure.name());
    yaml.line("    layers:    # from the outer face inwards; um");
    structure.layers().forEach(yaml::layer);
    if (!structure.total().isEmpty()) {
      yaml.line("    total: " + flow(structure.total()));
    }
    if (structure.reported().size() != structure.layers().size()) {
      yaml.line("    reported: " + groups(structure));
    }
    return yaml.text.toString();
  }

  private void layer(Layer layer) {
    line("      - name: " + layer.name());
    property("role", layer.role().name().toLowerCase(Locale.ROOT));
    layer.resin().ifPresent(resin -> property("resin", resin));
    SpecLimits individual = layer.individual();
    individual.target().ifPresent(um -> property("target", length(um)));
    individual.lower().ifPresent(um -> property("lower", length(um)));
    individual.upper().ifPresent(um -> property("upper", length(um)));
    if (!layer.average().isEmpty()) {
      property("average", flow(layer.average()));
    }
    layer.densityGcm3().ifPresent(density -> property("density", plain(density)));
    layer.extruder().ifPresent(extruder -> property("extruder", extruder));
    layer.velocityMps().ifPresent(velocity -> property("velocity", plain(velocity)));
    layer.greatestUm().ifPresent(um -> property("greatest", length(um)));
  }

  private void property(String name, String value) {
    line("        " + name + ": " + value);
  }

  private void line(String content) {
    text.append(content).append('\n');
  }

  private static String flow(SpecLimits limits) {
    List<String> parts = new ArrayList<>();
    part("target", limits.target(), parts);
    part("lower", limits.lower(), parts);
    part("upper", limits.upper(), parts);
    return "{" + String.join(", ", parts) + "}";
  }

  private static void part(String name, OptionalDouble um, List<String> parts) {
    um.ifPresent(value -> parts.add(name + ": " + length(value)));
  }

  private static String groups(Structure structure) {
    return structure.reported().stream()
        .map(StructureYaml::members)
        .collect(Collectors.joining(", ", "[", "]"));
  }

  private static String members(ReportedLayer group) {
    return group.members().stream().map(Layer::name).collect(Collectors.joining(", ", "[", "]"));
  }

  private static String length(double um) {
    return plain(um) + " um";
  }

  private static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }
}
