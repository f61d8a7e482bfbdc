package dev.filmward.film;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * Writes structures as a structures file, lengths in um with all their digits, so that reading it
 * gives the same structures again. Names of plain words are written as they are, others in quotes.
 */
public final class StructureYaml {
  private final StringBuilder text = new StringBuilder("structures:\n");

  private StructureYaml() {}

  public static String of(Structure structure) {
    return of(List.of(structure));
  }

  /** A file of several. */
  public static String of(Collection<Structure> structures) {
    StructureYaml yaml = new StructureYaml();
    structures.forEach(yaml::structure);
    return yaml.text.toString();
  }

  private void structure(Structure structure) {
    line("  - code: " + YamlText.of(structure.code()));
    line("    name: " + YamlText.onOwnLine(structure.name()));
    line("    layers:    # from the outer face inwards; um");
    structure.layers().forEach(this::layer);
    List<String> total = parts(structure.total());
    average(structure.totalAverage(), total);
    if (!total.isEmpty()) {
      line("    total: " + flow(total));
    }
    if (!structure.reported().stream().allMatch(StructureYaml::isAlone)) {
      line("    reported: " + groups(structure));
    }
  }

  private void layer(Layer layer) {
    line("      - name: " + YamlText.of(layer.name()));
    property("role", layer.role().name().toLowerCase(Locale.ROOT));
    layer.resin().ifPresent(resin -> property("resin", YamlText.of(resin)));
    SpecLimits individual = layer.individual();
    individual.target().ifPresent(um -> property("target", length(um)));
    individual.lower().ifPresent(um -> property("lower", length(um)));
    individual.upper().ifPresent(um -> property("upper", length(um)));
    if (!layer.average().isEmpty()) {
      property("average", flow(parts(layer.average())));
    }
    layer.densityGcm3().ifPresent(density -> property("density", plain(density)));
    layer.extruder().ifPresent(extruder -> property("extruder", YamlText.of(extruder)));
    layer.velocityMps().ifPresent(velocity -> property("velocity", plain(velocity)));
    layer.greatestUm().ifPresent(um -> property("greatest", length(um)));
  }

  private void property(String name, String value) {
    line("        " + name + ": " + value);
  }

  private void line(String content) {
    text.append(content).append('\n');
  }

  /** Whether it is what a layer is reported as where nothing is said. */
  private static boolean isAlone(ReportedLayer group) {
    Layer first = group.members().get(0);
    return group.members().size() == 1
        && group.name().equals(first.name())
        && group.individual().equals(first.individual())
        && group.average().equals(first.average());
  }

  private static String groups(Structure structure) {
    return structure.reported().stream()
        .map(StructureYaml::group)
        .collect(Collectors.joining(", ", "[", "]"));
  }

  /** What a group does not share with its members it states itself. */
  private static String group(ReportedLayer group) {
    List<Layer> members = group.members();
    String names =
        members.stream()
            .map(layer -> YamlText.of(layer.name()))
            .collect(Collectors.joining(", ", "[", "]"));
    List<String> own = new ArrayList<>();
    String joined = members.stream().map(Layer::name).collect(Collectors.joining(" + "));
    if (!group.name().equals(joined)) {
      own.add("name: " + YamlText.of(group.name()));
    }
    SpecLimits sum = SpecLimits.sum(members.stream().map(Layer::individual).toList());
    own.addAll(parts(apart(group.individual(), sum)));
    SpecLimits averages = SpecLimits.sum(members.stream().map(Layer::average).toList());
    average(apart(group.average(), averages), own);
    own.add(0, "layers: " + names);
    return own.size() == 1 ? names : flow(own);
  }

  private static SpecLimits apart(SpecLimits stated, SpecLimits base) {
    return new SpecLimits(
        apart(stated.lower(), base.lower()),
        apart(stated.target(), base.target()),
        apart(stated.upper(), base.upper()));
  }

  private static OptionalDouble apart(OptionalDouble stated, OptionalDouble base) {
    return stated.equals(base) ? OptionalDouble.empty() : stated;
  }

  private static void average(SpecLimits average, List<String> parts) {
    if (!average.isEmpty()) {
      parts.add("average: " + flow(parts(average)));
    }
  }

  private static String flow(List<String> parts) {
    return "{" + String.join(", ", parts) + "}";
  }

  private static List<String> parts(SpecLimits limits) {
    List<String> parts = new ArrayList<>();
    part("target", limits.target(), parts);
    part("lower", limits.lower(), parts);
    part("upper", limits.upper(), parts);
    return parts;
  }

  private static void part(String name, OptionalDouble um, List<String> parts) {
    um.ifPresent(value -> parts.add(name + ": " + length(value)));
  }

  private static String length(double um) {
    return plain(um) + " um";
  }

  private static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }
}
