package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.alarm.Disposition;
import dev.filmward.alarm.RollKey;
import dev.filmward.alarm.RollState;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.RollDecision;
import dev.filmward.pipeline.SuspectRoll;
import dev.filmward.pipeline.SuspectRolls;
import dev.filmward.store.Tables;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/** Rolls since the last good sample, and what becomes of rolls. */
final class RollResource {
  private static final int MOST = 500;

  private final Plant plant;

  RollResource(Plant plant) {
    this.plant = plant;
  }

  void ofAlarm(Context ctx) {
    ctx.json(ofAlarm(Requests.id(ctx)));
  }

  void list(Context ctx) {
    String state = Requests.textOr(ctx, "state", RollState.HELD.word());
    Optional<RollState> only =
        state.equals("all") ? Optional.empty() : Optional.of(RollState.fromWord(state));
    ObjectNode answer = Wire.object();
    ArrayNode rolls = answer.putArray("rolls");
    plant
        .store()
        .read(
            tables -> {
              for (Disposition now : tables.rolls().newest(only, MOST)) {
                ObjectNode roll =
                    rolls
                        .addObject()
                        .put("line", now.roll().line())
                        .put("structure", now.roll().structure())
                        .put("roll", now.roll().roll());
                addDecisions(roll, tables.rolls().of(now.roll()));
              }
              return rolls;
            });
    ctx.json(answer);
  }

  void hold(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    plant.rolls().hold(decision(ctx, body, RollState.HELD));
    ctx.json(kept(body));
  }

  void dispose(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    RollState state = RollState.fromWord(Requests.field(body, "state"));
    plant.rolls().dispose(decision(ctx, body, state));
    ctx.json(kept(body));
  }

  private static RollDecision decision(Context ctx, JsonNode body, RollState state) {
    Map<RollKey, Integer> rolls = new LinkedHashMap<>();
    for (JsonNode roll : Requests.array(body, "rolls")) {
      rolls.put(
          new RollKey(
              Requests.field(roll, "line"),
              Requests.field(roll, "structure"),
              Requests.field(roll, "roll")),
          Requests.wholeNumber(roll, "version"));
    }
    OptionalLong alarmId =
        body.path("alarm").isIntegralNumber()
            ? OptionalLong.of(body.path("alarm").asLong())
            : OptionalLong.empty();
    return new RollDecision(
        rolls, state, Requests.by(ctx, body), Requests.field(body, "reason"), alarmId);
  }

  /** How the rolls that were decided about stand now. */
  private ObjectNode kept(JsonNode body) {
    ObjectNode answer = Wire.object();
    ArrayNode rolls = answer.putArray("rolls");
    plant
        .store()
        .read(
            tables -> {
              for (JsonNode named : body.path("rolls")) {
                RollKey key =
                    new RollKey(
                        Requests.field(named, "line"),
                        Requests.field(named, "structure"),
                        Requests.field(named, "roll"));
                addDecisions(rolls.addObject().put("roll", key.roll()), tables.rolls().of(key));
              }
              return rolls;
            });
    return answer;
  }

  private ObjectNode ofAlarm(long id) {
    SuspectRolls suspect = plant.rolls().suspect(id);
    ObjectNode answer = Wire.object().put("over", suspect.isOver());
    answer.putNull("lastGood");
    suspect
        .lastGood()
        .ifPresent(
            good ->
                answer
                    .putObject("lastGood")
                    .put("roll", good.key().roll())
                    .put("sample", good.key().sample())
                    .put("takenAt", time(good.takenAt())));
    answer.put("until", suspect.isOver() ? time(suspect.span().to()) : null);
    ArrayNode rolls = answer.putArray("rolls");
    plant
        .store()
        .read(
            tables -> {
              suspect.rolls().forEach(roll -> rolls.add(json(tables, roll)));
              return rolls;
            });
    return answer;
  }

  private ObjectNode json(Tables tables, SuspectRoll roll) {
    ObjectNode node =
        Wire.object()
            .put("line", roll.roll().line())
            .put("structure", roll.roll().structure())
            .put("roll", roll.roll().roll())
            .put("firstAt", time(roll.firstAt()))
            .put("lastAt", time(roll.lastAt()))
            .put("samples", roll.samples())
            .put("readings", roll.readings())
            .put("outOfSpec", roll.outOfSpec())
            .put("averagesOutOfSpec", roll.averagesOutOfSpec())
            .put("heldOut", roll.heldOut())
            .put("thinned", roll.thinned());
    addDecisions(node, tables.rolls().of(roll.roll()));
    return node;
  }

  /** Adds what holds now, and what was decided before. */
  private void addDecisions(ObjectNode node, List<Disposition> newestFirst) {
    node.put("version", newestFirst.isEmpty() ? 0 : newestFirst.get(0).revision().version());
    node.putNull("state");
    newestFirst.stream().findFirst().ifPresent(now -> node.put("state", now.state().word()));
    ArrayNode decisions = node.putArray("decisions");
    for (Disposition decided : newestFirst) {
      ObjectNode one =
          decisions
              .addObject()
              .put("version", decided.revision().version())
              .put("state", decided.state().word())
              .put("by", decided.revision().author())
              .put("reason", decided.revision().reason())
              .put("at", time(decided.revision().at()))
              .putNull("alarm");
      decided.alarmId().ifPresent(alarm -> one.put("alarm", alarm));
    }
  }

  private String time(Instant instant) {
    return Wire.time(instant, plant.zone());
  }
}
