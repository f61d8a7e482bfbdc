package dev.filmward.pipeline;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.StructureChange.Value;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What differs between two versions of a structure. One owner, one thread. */
final class StructureDiff {
  private static final String LAYER = "layer";
  private static final String REPORTED = "reported";

  private final List<StructureChange> changes = new ArrayList<>();

  private StructureDiff() {}

  static List<StructureChange> between(Structure before, Structure after) {
    StructureDiff diff = new StructureDiff();
    diff.values(
        "structure",
        0,
        "",
        Map.of("name", Value.of(before.name())),
        Map.of("name", Value.of(after.name())));
    diff.layers(before.layers(), after.layers());
    diff.groups(before.reported(), after.reported());
    diff.values(
        "total",
        0,
        "",
        limits(before.total(), before.totalAverage()),
        limits(after.total(), after.totalAverage()));
    return diff.changes;
  }

  /** Layers are the same by their name; where as many are there, one that was renamed too. */
  private void layers(List<Layer> before, List<Layer> after) {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < after.size(); i++) {
      order.add(place(after.get(i), i, before, after));
    }
    List<Integer> there = order.stream().filter(was -> was >= 0).toList();
    List<Integer> sorted = there.stream().sorted().toList();
    for (int i = 0; i < after.size(); i++) {
      Layer layer = after.get(i);
      int was = order.get(i);
      if (was < 0) {
        changes.add(whole(i + 1, layer, "added"));
      } else {
        if (there.indexOf(was) != sorted.indexOf(was)) {
          changes.add(moved(was, i, layer));
        }
        values(LAYER, i + 1, layer.name(), properties(before.get(was)), properties(layer));
      }
    }
    for (int i = 0; i < before.size(); i++) {
      if (!order.contains(i)) {
        changes.add(whole(i + 1, before.get(i), "removed"));
      }
    }
  }

  /** Where a layer of one list is in the other, from 0; below zero where it is not. */
  private static int place(Layer layer, int at, List<Layer> other, List<Layer> own) {
    int named = names(other).indexOf(layer.name());
    boolean isRenamed =
        named < 0 && own.size() == other.size() && !names(own).contains(other.get(at).name());
    return isRenamed ? at : named;
  }

  private static List<String> names(List<Layer> layers) {
    return layers.stream().map(Layer::name).toList();
  }

  private static StructureChange whole(int position, Layer layer, String what) {
    return new StructureChange(LAYER, position, layer.name(), what, Value.NONE, Value.NONE);
  }

  /** Past others that are still there, not only since one above it came or went. */
  private static StructureChange moved(int was, int is, Layer layer) {
    Value from = Value.of(String.valueOf(was + 1));
    Value to = Value.of(String.valueOf(is + 1));
    return new StructureChange(LAYER, is + 1, layer.name(), "moved", from, to);
  }

  private static Map<String, Value> properties(Layer layer) {
    Map<String, Value> values = new LinkedHashMap<>();
    values.put("name", Value.of(layer.name()));
    values.put("role", Value.of(layer.role().name().toLowerCase(Locale.ROOT)));
    values.put("resin", Value.of(layer.resin().orElse("")));
    values.putAll(limits(layer.individual(), layer.average()));
    values.put("density", Value.of(layer.densityGcm3()));
    values.put("extruder", Value.of(layer.extruder().orElse("")));
    values.put("velocity", Value.of(layer.velocityMps()));
    values.put("greatest", Value.of(layer.greatestUm()));
    return values;
  }

  private static Map<String, Value> limits(SpecLimits individual, SpecLimits average) {
    Map<String, Value> values = new LinkedHashMap<>();
    values.put("target", Value.of(individual.target()));
    values.put("lower", Value.of(individual.lower()));
    values.put("upper", Value.of(individual.upper()));
    values.put("average.target", Value.of(average.target()));
    values.put("average.lower", Value.of(average.lower()));
    values.put("average.upper", Value.of(average.upper()));
    return values;
  }

  /** Groups of more than one layer, and what groups state themselves; the rest follows. */
  private void groups(List<ReportedLayer> before, List<ReportedLayer> after) {
    String was = grouping(before);
    String is = grouping(after);
    if (!was.equals(is)) {
      changes.add(new StructureChange(REPORTED, 0, "", "layers", Value.of(was), Value.of(is)));
    }
    for (ReportedLayer group : after) {
      Optional<ReportedLayer> same =
          before.stream()
              .filter(other -> members(other).equals(members(group)))
              .filter(other -> members(group).size() > 1)
              .findFirst();
      same.ifPresent(
          other -> values(REPORTED, group.position(), group.name(), stated(other), stated(group)));
    }
  }

  private static Map<String, Value> stated(ReportedLayer group) {
    Map<String, Value> values = new LinkedHashMap<>();
    values.put("name", Value.of(group.name()));
    values.putAll(limits(group.individual(), group.average()));
    return values;
  }

  private static List<String> members(ReportedLayer group) {
    return names(group.members());
  }

  private static String grouping(List<ReportedLayer> groups) {
    return groups.stream()
        .filter(group -> group.members().size() > 1)
        .map(group -> String.join(" + ", members(group)))
        .collect(Collectors.joining(", "));
  }

  private void values(
      String part, int position, String name, Map<String, Value> before, Map<String, Value> after) {
    after.forEach(
        (what, is) -> {
          Value was = before.getOrDefault(what, Value.NONE);
          if (!is.isLike(was)) {
            changes.add(new StructureChange(part, position, name, what, was, is));
          }
        });
  }
}
