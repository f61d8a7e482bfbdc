package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Structure;
import dev.filmward.gauge.Gauge;
import dev.filmward.gauge.calibration.GaugeSetting;
import dev.filmward.gauge.calibration.GaugeUse;
import dev.filmward.gauge.calibration.Scaling.Word;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.GaugeTable;
import dev.filmward.store.SampleTable.Production;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Gauges, the lines that they measure, and what they are set to. */
final class GaugeResource {
  private final Plant plant;
  private final GaugeJson json;

  GaugeResource(Plant plant) {
    this.plant = plant;
    this.json = new GaugeJson(plant.zone());
  }

  void list(Context ctx) {
    ObjectNode answer = Wire.object();
    ArrayNode gauges = answer.putArray("gauges");
    for (GaugeTable.Kept kept : plant.gauges().gauges()) {
      Gauge gauge = kept.gauge();
      ObjectNode node =
          gauges
              .addObject()
              .put("name", gauge.name())
              .put("centreMhz", gauge.centreMhz())
              .put("bandwidth", gauge.bandwidth())
              .put("version", kept.version());
      json.word(node, kept.word());
    }
    ArrayNode uses = answer.putArray("uses");
    for (GaugeUse use : plant.gauges().uses()) {
      ObjectNode node =
          uses.addObject()
              .put("line", use.line())
              .put("gauge", use.gauge())
              .put("since", Wire.time(use.holdsFrom(), plant.zone()));
      json.word(node, use.word());
    }
    ArrayNode made = answer.putArray("made");
    for (Production each : plant.store().read(tables -> tables.samples().productions())) {
      plant.structures().find(each.structure()).ifPresent(film -> made.add(made(each, film)));
    }
    ctx.json(answer);
  }

  /** What a line makes of a structure, with what its gauge is set to for each layer now. */
  private ObjectNode made(Production made, Structure structure) {
    List<GaugeSetting> settings = plant.gauges().settings(made.line(), made.structure());
    ObjectNode node =
        Wire.object()
            .put("line", made.line())
            .put("structure", made.structure())
            .put("lastAt", Wire.time(made.lastAt(), plant.zone()));
    ArrayNode layers = node.putArray("layers");
    for (ReportedLayer reported : structure.reported()) {
      ObjectNode each =
          layers.addObject().put("position", reported.position()).put("name", reported.name());
      ArrayNode members = each.putArray("members");
      reported.members().forEach(member -> members.add(member(member, settings)));
    }
    ArrayNode said = node.putArray("settings");
    settings.forEach(setting -> said.add(json.setting(setting)));
    node.set("scalings", json.scalings(plant.rescaling().of(made.line(), made.structure())));
    return node;
  }

  private ObjectNode member(Layer layer, List<GaugeSetting> settings) {
    Instant now = plant.clock().instant();
    Optional<GaugeSetting> held = Optional.empty();
    for (GaugeSetting setting : settings) {
      boolean holds = setting.layer().equals(layer.name()) && !setting.holdsFrom().isAfter(now);
      boolean isLater =
          held.map(known -> !setting.holdsFrom().isBefore(known.holdsFrom())).orElse(true);
      held = holds && isLater ? Optional.of(setting) : held;
    }
    ObjectNode node =
        Wire.object().put("name", layer.name()).put("resin", layer.resin().orElse(""));
    Wire.number(
        node,
        "velocityMps",
        held.map(setting -> OptionalDouble.of(setting.velocity().mps()))
            .orElse(layer.velocityMps()));
    node.put("offsetNs", held.map(setting -> setting.velocity().offsetNs()).orElse(0.0));
    Wire.number(node, "greatestUm", held.map(GaugeSetting::greatestUm).orElse(layer.greatestUm()));
    return node.put("from", held.isPresent() ? "person" : "structures");
  }

  /** {@code {"name", "centreMhz", "bandwidth", "reason"}}. */
  void keep(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    plant
        .gauges()
        .keep(
            new Gauge(
                Requests.field(body, "name"),
                GaugeRequests.number(body, "centreMhz"),
                GaugeRequests.number(body, "bandwidth")),
            word(ctx, body));
    list(ctx);
  }

  /** {@code {"line", "gauge", "since", "reason"}}. */
  void use(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    plant
        .gauges()
        .use(
            new GaugeUse(
                Requests.field(body, "line"),
                Requests.field(body, "gauge"),
                GaugeRequests.time(body, "since"),
                word(ctx, body)));
    list(ctx);
  }

  /** {@code {"line", "structure", "layer", "velocityMps", "offsetNs", "greatestUm", "since"}}. */
  void set(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    plant
        .gauges()
        .set(
            new GaugeSetting(
                Requests.field(body, "line"),
                Requests.field(body, "structure"),
                Requests.field(body, "layer"),
                GaugeRequests.velocity(body),
                body.hasNonNull("greatestUm")
                    ? OptionalDouble.of(GaugeRequests.number(body, "greatestUm"))
                    : OptionalDouble.empty(),
                GaugeRequests.time(body, "since"),
                word(ctx, body)));
    list(ctx);
  }

  private Word word(Context ctx, JsonNode body) {
    return new Word(Requests.by(ctx), Requests.field(body, "reason"), plant.clock().instant());
  }
}
