package dev.filmward.intake;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.SpecLimits;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Reads how a structure's layers are reported: as neighbours in groups that together hold every
 * layer once, in order; or each by itself where nothing is said. One owner, one thread.
 */
final class GroupReader {
  private static final List<String> KEYS =
      List.of("layers", "name", "target", "lower", "upper", "average");

  private final Entries structure;
  private final List<Layer> layers;
  private final List<ReportedLayer> reported = new ArrayList<>();
  private int used;

  GroupReader(Entries structure, List<Layer> layers) {
    this.structure = structure;
    this.layers = layers;
  }

  /** Empty where a fault keeps them from being made. */
  List<ReportedLayer> read() {
    Optional<YamlNode> node = structure.node("reported");
    if (node.isEmpty()) {
      layers.forEach(this::addAlone);
    } else if (node.get() instanceof YamlNode.Listing listing) {
      addGroups(listing.items());
    } else {
      structure.fault("reported", node.get().words() + " stands where there should be a list");
    }
    return namesAreClear() ? reported : List.of();
  }

  private void addAlone(Layer layer) {
    reported.add(
        new ReportedLayer(
            reported.size() + 1,
            layer.name(),
            List.of(layer),
            layer.individual(),
            layer.average()));
  }

  private void addGroups(List<YamlNode> nodes) {
    for (YamlNode node : nodes) {
      if (!addGroup(node)) {
        reported.clear();
        return;
      }
    }
    if (used < layers.size()) {
      structure.fault(
          "reported",
          Words.quoted(layers.get(used).name())
              + " is in no group; the groups together hold every layer once, in order");
      reported.clear();
    }
  }

  private boolean addGroup(YamlNode node) {
    String place = structure.place() + ", reported, group " + (reported.size() + 1);
    boolean hasKeys = node instanceof YamlNode.Mapping;
    Optional<Entries> stated =
        hasKeys ? Optional.of(Entries.of(node, place, structure.faults(), KEYS)) : Optional.empty();
    YamlNode names = stated.flatMap(entries -> entries.node("layers")).orElse(node);
    List<Layer> members = new ArrayList<>();
    if (!(names instanceof YamlNode.Listing listing) || listing.items().isEmpty()) {
      structure.faults().add(names.line(), place + ": should list the layers it is made of");
      return false;
    }
    for (YamlNode name : listing.items()) {
      if (!addMember(name, place, members)) {
        return false;
      }
    }
    reported.add(group(members, stated));
    return true;
  }

  private boolean addMember(YamlNode node, String place, List<Layer> members) {
    String name = node instanceof YamlNode.Scalar scalar ? scalar.text() : "";
    if (used < layers.size() && layers.get(used).name().equals(name)) {
      members.add(layers.get(used++));
      return true;
    }
    structure.faults().add(node.line(), place + ": " + misfit(node, name));
    return false;
  }

  private String misfit(YamlNode node, String name) {
    List<String> names = layers.stream().map(Layer::name).toList();
    if (!names.contains(name)) {
      return node.words()
          + " is not a layer of this structure; "
          + Nearest.to(name, names)
              .map(nearest -> "the nearest is " + Words.quoted(nearest))
              .orElseGet(() -> "its layers are " + Words.some(names));
    }
    String next =
        used < layers.size()
            ? "the next layer is " + Words.quoted(layers.get(used).name())
            : "no layer is left";
    return Words.quoted(name)
        + " does not follow here: "
        + next
        + "; the groups together hold every layer once, in order";
  }

  private ReportedLayer group(List<Layer> members, Optional<Entries> stated) {
    SpecLimits individual = SpecLimits.sum(members.stream().map(Layer::individual).toList());
    SpecLimits average = SpecLimits.sum(members.stream().map(Layer::average).toList());
    String joined = members.stream().map(Layer::name).collect(Collectors.joining(" + "));
    return new ReportedLayer(
        reported.size() + 1,
        stated.flatMap(entries -> entries.text("name")).orElse(joined),
        members,
        stated.map(entries -> entries.limits(individual)).orElse(individual),
        stated.map(entries -> StructureReader.average(entries, average)).orElse(average));
  }

  /** Whether a file that calls a layer by its name, or by its position, can mean only one. */
  private boolean namesAreClear() {
    List<String> names = reported.stream().map(ReportedLayer::name).toList();
    boolean clear = true;
    for (int i = 0; i < names.size(); i++) {
      String name = names.get(i);
      if (names.indexOf(name) < i) {
        structure.fault(
            "layers", "two reported layers are named " + Words.quoted(name) + "; rename one");
        clear = false;
      }
      if (name.matches("[0-9]{1,6}") && Integer.parseInt(name) != i + 1) {
        structure.fault(
            "layers",
            Words.quoted(name) + " would be taken for a position; put a word in the name");
        clear = false;
      }
    }
    return clear;
  }
}
