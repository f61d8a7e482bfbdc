package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.chart.LimitsState;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.BaselineChoice;
import dev.filmward.pipeline.BaselineChoice.Where;
import dev.filmward.pipeline.FrozenLimits;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.ScaledLimits;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.LimitsTable.Exclusion;
import dev.filmward.store.LimitsTable.VersionKey;
import dev.filmward.subgroup.Subgrouping;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Set;

/** Control limits: what a baseline would give, their versions, and the decisions about them. */
final class LimitsResource {
  private final Plant plant;
  private final LimitsJson json;

  LimitsResource(Plant plant) {
    this.plant = plant;
    this.json = new LimitsJson(plant.zone());
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
      List<LimitsVersion> versions = plant.store().read(tables -> tables.limits().of(series));
      Set<Integer> otherwise =
          plant.store().read(tables -> ScaledLimits.of(tables, series).otherwise(versions));
      for (ObjectNode version : json.versions(versions, otherwise)) {
        version.set("characteristic", Wire.characteristic(characteristic));
        addDecided(version, new VersionKey(line, code, version.get("version").asInt()));
        limits.add(version);
      }
    }
    ctx.json(answer);
  }

  /** What was decided about a version as a whole. */
  private void addDecided(ObjectNode version, VersionKey key) {
    ArrayNode exclusions = version.putArray("exclusions");
    for (Exclusion each : plant.store().read(tables -> tables.limits().exclusions(key))) {
      exclusions
          .addObject()
          .put("roll", each.roll())
          .put("sample", each.sample())
          .put("cause", each.cause());
    }
    plant
        .store()
        .read(tables -> tables.limits().remedy(key))
        .ifPresent(remedy -> version.put("autocorrelation", remedy));
  }

  void propose(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    String line = Requests.field(body, "line");
    String structure = Requests.field(body, "structure");
    BaselineChoice choice = LimitsRequests.baseline(body, usual(line, structure));
    ctx.json(json.proposal(plant.proposeLimits(line, structure, choice)));
  }

  void freeze(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    String line = Requests.field(body, "line");
    String structure = Requests.field(body, "structure");
    BaselineChoice choice = LimitsRequests.baseline(body, usual(line, structure));
    StateChange change =
        LimitsRequests.change(body, LimitsState.FROZEN, Requests.by(ctx, body), now());
    FrozenLimits frozen = plant.putInForce(line, structure, choice, change);
    ctx.json(
        Wire.object()
            .put("version", frozen.version())
            .put("characteristics", frozen.characteristics())
            .put("holdsFrom", Wire.time(frozen.holdsFrom(), plant.zone())));
  }

  void move(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    VersionKey key =
        new VersionKey(
            Requests.field(body, "line"),
            Requests.field(body, "structure"),
            body.path("version").asInt());
    Requests.field(body, "state");
    StateChange change =
        LimitsRequests.change(body, LimitsState.FROZEN, Requests.by(ctx, body), now());
    plant.moveLimits(key, change, LimitsRequests.remedy(body));
    ctx.json(Wire.object().put("version", key.version()).put("state", change.state().word()));
  }

  /** The first limits come from the first samples, later ones from the last. */
  private Where usual(String line, String structure) {
    return plant.hasLimits(line, structure) ? Where.LAST : Where.FIRST;
  }

  private Instant now() {
    return plant.clock().instant();
  }
}
