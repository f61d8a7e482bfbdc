package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.FrozenLimits;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.subgroup.Subgrouping;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.ZoneId;
import java.util.NoSuchElementException;

/** Control limits: their versions, and the decision to freeze new ones. */
final class LimitsResource {
  private static final int USUAL_BASELINE = 25;

  private final Plant plant;

  LimitsResource(Plant plant) {
    this.plant = plant;
  }

  void list(Context ctx) {
    String line = ctx.pathParam("line");
    String code = Requests.text(ctx, "structure");
    Structure structure =
        plant
            .structures()
            .find(code)
            .orElseThrow(() -> new NoSuchElementException("no structure \"" + code + "\""));
    ObjectNode answer = Wire.object();
    ArrayNode limits = answer.putArray("limits");
    for (Characteristic characteristic : Subgrouping.layersAndTotal(structure).characteristics()) {
      Series series = new Series(line, code, characteristic.position());
      for (LimitsVersion version : plant.store().read(tables -> tables.limits().of(series))) {
        ObjectNode node = json(version, "frozen", plant.zone());
        node.set("characteristic", Wire.characteristic(characteristic));
        limits.add(node);
      }
    }
    ctx.json(answer);
  }

  void freeze(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    Decision decision =
        new Decision(
            Requests.field(body, "by"), Requests.field(body, "reason"), plant.clock().instant());
    FrozenLimits frozen =
        plant.freezeLimits(
            Requests.field(body, "line"),
            Requests.field(body, "structure"),
            subgroups(body),
            decision);
    ctx.json(
        Wire.object()
            .put("version", frozen.version())
            .put("characteristics", frozen.characteristics()));
  }

  private static int subgroups(JsonNode body) {
    JsonNode subgroups = body.path("subgroups");
    if (subgroups.isMissingNode()) {
      return USUAL_BASELINE;
    }
    if (!(subgroups.isInt() && subgroups.intValue() > 0)) {
      throw new IllegalArgumentException("\"subgroups\" is a whole number above 0");
    }
    return subgroups.intValue();
  }

  static ObjectNode json(LimitsVersion version, String state, ZoneId zone) {
    return Wire.object()
        .put("version", version.version())
        .put("state", state)
        .put("holdsFrom", Wire.time(version.holdsFrom(), zone))
        .put("author", version.decision().author())
        .put("reason", version.decision().reason())
        .put("centre", version.limits().centre())
        .put("sigma", version.limits().sigmaWithin())
        .put("subgroups", version.baseline().subgroups())
        .put("baselineFrom", Wire.time(version.baseline().from(), zone))
        .put("baselineTo", Wire.time(version.baseline().to(), zone));
  }
}
