package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import dev.filmward.film.StructureYaml;
import dev.filmward.pipeline.KnownStructure;
import dev.filmward.pipeline.StructureChange;
import dev.filmward.pipeline.StructurePreview;
import dev.filmward.pipeline.StructureVersion;
import dev.filmward.store.StructureTable.Given;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;

/** Structures and their versions as JSON; lengths in um. Immutable. */
final class StructureJson {
  private final ZoneId zone;

  StructureJson(ZoneId zone) {
    this.zone = zone;
  }

  ObjectNode of(KnownStructure known) {
    StructureVersion shown = known.shown();
    ObjectNode node =
        Wire.object()
            .put("code", known.code())
            .put("version", shown.number())
            .put("standing", shown.standing().word())
            .put("samples", known.samples())
            .put("takeBack", known.takeBack().orElse(null));
    ArrayNode lines = node.putArray("lines");
    known.made().forEach(made -> lines.add(made.line()));
    node.set("structure", structure(shown.structure()));
    ArrayNode versions = node.putArray("versions");
    known.versions().forEach(version -> versions.insert(0, version(version, known.versions())));
    return node;
  }

  ObjectNode preview(StructurePreview preview) {
    ObjectNode node = Wire.object().put("yaml", preview.yaml());
    ArrayNode entries = node.putArray("structures");
    for (StructurePreview.Entry entry : preview.entries()) {
      ObjectNode each =
          entries
              .addObject()
              .put("code", entry.structure().code())
              .put("state", entry.state().word())
              .put("samples", entry.samples())
              .put("otherLayers", entry.otherLayers());
      each.set("structure", structure(entry.structure()));
      each.set("changes", changes(entry.changes()));
    }
    return node;
  }

  private ObjectNode version(StructureVersion version, List<StructureVersion> all) {
    Given given = version.file().given();
    ObjectNode node =
        Wire.object()
            .put("version", version.number())
            .put("standing", version.standing().word())
            .put("by", given.by())
            .put("at", Wire.time(given.receivedAt(), zone))
            .put("holdsFrom", Wire.time(given.holdsFrom().orElse(given.receivedAt()), zone))
            .put("reason", given.reason())
            .put("file", version.file().file().name())
            .put("takesBack", undone(given.takesBack(), all).orElse(null))
            .put("yaml", StructureYaml.of(version.structure()));
    node.set("changes", changes(version.changes()));
    return node;
  }

  private static Optional<Integer> undone(OptionalLong file, List<StructureVersion> all) {
    return all.stream()
        .filter(version -> file.isPresent() && version.file().id() == file.getAsLong())
        .map(StructureVersion::number)
        .findFirst();
  }

  private static ArrayNode changes(List<StructureChange> changes) {
    ArrayNode all = Wire.object().arrayNode();
    for (StructureChange change : changes) {
      ObjectNode node =
          all.addObject()
              .put("part", change.part())
              .put("position", change.position())
              .put("name", change.name())
              .put("what", change.what());
      put(node, "was", change.was());
      put(node, "is", change.is());
    }
    return all;
  }

  private static void put(ObjectNode node, String key, StructureChange.Value value) {
    if (value.number().isPresent()) {
      node.put(key, value.number().getAsDouble());
    } else {
      node.put(key, value.text().isEmpty() ? null : value.text());
    }
  }

  private static ObjectNode structure(Structure structure) {
    ObjectNode node = Wire.object().put("code", structure.code()).put("name", structure.name());
    ArrayNode layers = node.putArray("layers");
    structure.layers().forEach(layer -> layers.add(layer(layer)));
    ArrayNode reported = node.putArray("reported");
    structure.reported().forEach(group -> reported.add(group(group)));
    node.set("total", Wire.spec(structure.total()));
    node.set("totalAverage", Wire.spec(structure.totalAverage()));
    return node;
  }

  private static ObjectNode layer(Layer layer) {
    ObjectNode node =
        Wire.object()
            .put("name", layer.name())
            .put("role", layer.role().name().toLowerCase(Locale.ROOT))
            .put("resin", layer.resin().orElse(null))
            .put("extruder", layer.extruder().orElse(null));
    node.set("spec", Wire.spec(layer.individual()));
    node.set("average", Wire.spec(layer.average()));
    layer.densityGcm3().ifPresent(density -> node.put("density", density));
    layer.velocityMps().ifPresent(velocity -> node.put("velocity", velocity));
    layer.greatestUm().ifPresent(um -> node.put("greatest", um));
    return node;
  }

  private static ObjectNode group(ReportedLayer group) {
    ObjectNode node = Wire.object().put("position", group.position()).put("name", group.name());
    ArrayNode members = node.putArray("members");
    group.members().forEach(layer -> members.add(layer.name()));
    node.set("spec", Wire.spec(group.individual()));
    node.set("average", Wire.spec(group.average()));
    return node;
  }
}
