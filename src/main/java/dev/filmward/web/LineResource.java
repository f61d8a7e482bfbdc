package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.alarm.LineMode;
import dev.filmward.alarm.LineModeChange;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.pipeline.LineEvent;
import dev.filmward.pipeline.LineEvents;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.FigureTable.Span;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/** What lines are doing. */
final class LineResource {
  private static final int MOST = 200;
  private static final Duration USUAL_EVENTS = Duration.ofHours(8);

  private final Plant plant;

  LineResource(Plant plant) {
    this.plant = plant;
  }

  /** What is so now, and what was said, newest first. */
  void modes(Context ctx) {
    answer(ctx, ctx.pathParam("line"));
  }

  /** {@code {"mode", "since", "samples", "reason"}}; now, and as usual, where left out. */
  void say(Context ctx) throws IOException {
    String line = ctx.pathParam("line");
    JsonNode body = Requests.body(ctx);
    Instant now = plant.clock().instant();
    LineMode mode = LineMode.fromWord(Requests.field(body, "mode"));
    String reason = body.path("reason").asText("").strip();
    Decision decision =
        new Decision(Requests.by(ctx, body), reason.isEmpty() ? "not given" : reason, now);
    int usual = mode.passes() ? LineModeChange.USUAL_SAMPLES : 0;
    int samples = body.path("samples").isInt() ? body.path("samples").asInt() : usual;
    plant
        .lines()
        .say(
            new LineModeChange(line, mode, Requests.moment(body, "since", now), samples, decision));
    answer(ctx, line);
  }

  /** {@code ?from&to} in milliseconds since 1970; the last 8 hours up to now where left out. */
  void events(Context ctx) {
    String line = ctx.pathParam("line");
    Instant to = at(ctx, "to").orElseGet(plant.clock()::instant);
    Instant from = at(ctx, "from").orElseGet(() -> to.minus(USUAL_EVENTS));
    List<LineEvent> found =
        plant
            .store()
            .read(tables -> new LineEvents(plant, tables, line, new Span(from, to)).read());
    ObjectNode answer = Wire.object().put("line", line).put("more", found.size() > MOST);
    ArrayNode events = answer.putArray("events");
    found.stream().skip(Math.max(0, found.size() - MOST)).map(this::json).forEach(events::add);
    ctx.json(answer);
  }

  private static Optional<Instant> at(Context ctx, String name) {
    return Requests.number(ctx, name).map(Instant::ofEpochMilli);
  }

  private ObjectNode json(LineEvent event) {
    ObjectNode node =
        Wire.object()
            .put("at", Wire.time(event.at(), plant.zone()))
            .put("kind", event.kind().word());
    event.alarm().ifPresent(id -> node.put("alarm", id));
    new TreeMap<>(event.said()).forEach(node::put);
    return node;
  }

  private void answer(Context ctx, String line) {
    ObjectNode answer = Wire.object().put("line", line);
    ArrayNode said = answer.putArray("said");
    for (LineModeChange change : plant.lines().said(line).changes()) {
      said.insert(0, json(change));
    }
    while (said.size() > MOST) {
      said.remove(said.size() - 1);
    }
    ctx.json(answer.put("mode", plant.lines().now(line).word()));
  }

  private ObjectNode json(LineModeChange change) {
    return Wire.object()
        .put("mode", change.mode().word())
        .put("since", Wire.time(change.since(), plant.zone()))
        .put("samples", change.samples())
        .put("by", change.decision().author())
        .put("reason", change.decision().reason())
        .put("at", Wire.time(change.decision().at(), plant.zone()));
  }
}
