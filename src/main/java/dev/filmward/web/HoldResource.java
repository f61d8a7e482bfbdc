package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.alarm.Deviation;
import dev.filmward.alarm.Hold;
import dev.filmward.alarm.Hold.Kind;
import dev.filmward.alarm.HoldScope;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.pipeline.Plant;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.Duration;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

/** What people hold back: shelves, and what is out of service. */
final class HoldResource {
  private final Plant plant;

  HoldResource(Plant plant) {
    this.plant = plant;
  }

  /** Those that go on. */
  void list(Context ctx) {
    ObjectNode answer = Wire.object();
    answer.put("longestShelfMinutes", Hold.LONGEST_SHELF.toMinutes());
    ArrayNode holds = answer.putArray("holds");
    plant.holds().goingOn().forEach(hold -> holds.add(HoldJson.of(hold, plant.zone())));
    ctx.json(answer);
  }

  /** {@code {"minutes", "reason"}}. */
  void shelve(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    Decision decision = decision(ctx, body);
    if (!body.path("minutes").isInt()) {
      throw new IllegalArgumentException("\"minutes\" is missing: for how long?");
    }
    Duration time = Duration.ofMinutes(body.path("minutes").asInt());
    Hold hold = plant.holds().shelve(Requests.id(ctx), decision.at().plus(time), decision);
    ctx.json(HoldJson.of(hold, plant.zone()));
  }

  /**
   * {@code {"line", "structure", "positions", "deviation", "reason"}}; the middle three may be left
   * out.
   */
  void takeOut(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    HoldScope scope =
        new HoldScope(
            Requests.field(body, "line"),
            Optional.of(body.path("structure").asText("")).filter(code -> !code.isEmpty()),
            positions(body),
            deviation(body));
    Hold hold = plant.holds().takeOut(scope, decision(ctx, body));
    ctx.json(HoldJson.of(hold, plant.zone()));
  }

  void endShelf(Context ctx) throws IOException {
    end(ctx, Kind.SHELVED);
  }

  void putBack(Context ctx) throws IOException {
    end(ctx, Kind.OUT_OF_SERVICE);
  }

  private void end(Context ctx, Kind kind) throws IOException {
    plant.holds().end(Requests.id(ctx), kind, decision(ctx, Requests.body(ctx)));
    list(ctx);
  }

  private Decision decision(Context ctx, JsonNode body) {
    return new Decision(
        Requests.by(ctx, body), Requests.field(body, "reason"), plant.clock().instant());
  }

  private static Set<Integer> positions(JsonNode body) {
    Set<Integer> positions = new HashSet<>();
    for (JsonNode each : body.path("positions")) {
      if (!each.isInt()) {
        throw new IllegalArgumentException(
            "\"positions\" are numbers of layers from 1, and 0 for the total");
      }
      positions.add(each.asInt());
    }
    return positions;
  }

  private static Optional<Deviation> deviation(JsonNode body) {
    String word = body.path("deviation").asText("");
    Optional<Deviation> found =
        Arrays.stream(Deviation.values()).filter(way -> way.word().equals(word)).findFirst();
    if (found.isEmpty() && !word.isEmpty()) {
      throw new IllegalArgumentException(
          "\"deviation\" is thicker, thinner, spread or pattern, not \"" + word + "\"");
    }
    return found;
  }
}
