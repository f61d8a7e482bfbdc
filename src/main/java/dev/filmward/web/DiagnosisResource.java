package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.diagnosis.Boundary;
import dev.filmward.diagnosis.Causes;
import dev.filmward.diagnosis.HitRate;
import dev.filmward.diagnosis.LineEntry;
import dev.filmward.pipeline.Explained;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.FigureTable.Span;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** What changed and why, what people wrote down of a line, and how often the cause was named. */
final class DiagnosisResource {
  private static final Duration USUAL_LOG = Duration.ofDays(31);

  private final Plant plant;

  DiagnosisResource(Plant plant) {
    this.plant = plant;
  }

  void ofAlarm(Context ctx) {
    long id = Requests.id(ctx);
    Explained explained = plant.diagnoses().of(id);
    Causes causes = plant.store().read(tables -> tables.causes().current());
    ObjectNode answer =
        new DiagnosisJson(explained.structure(), causes, plant.zone()).of(explained);
    ctx.json(answer.put("alarm", id));
  }

  void hitRate(Context ctx) {
    HitRate rate = plant.diagnoses().hitRate();
    Causes causes = plant.store().read(tables -> tables.causes().current());
    ObjectNode answer = Wire.object();
    answer.set("all", json(rate.all()));
    ArrayNode byCause = answer.putArray("byCause");
    rate.byCause()
        .forEach(
            (code, count) ->
                byCause.add(
                    json(count)
                        .put("code", code)
                        .put("cause", causes.find(code).map(cause -> cause.words()).orElse(code))));
    ctx.json(answer);
  }

  private static ObjectNode json(HitRate.Count count) {
    return Wire.object()
        .put("alarms", count.alarms())
        .put("first", count.first())
        .put("shown", count.shown())
        .put("silent", count.silent());
  }

  /** The last month, or since a time. */
  void log(Context ctx) {
    answer(ctx, ctx.pathParam("line"));
  }

  /** {@code {"kind", "at", "positions", "words"}}; now, and any layer, where left out. */
  void write(Context ctx) throws IOException {
    String line = ctx.pathParam("line");
    JsonNode body = Requests.body(ctx);
    List<Integer> positions = new ArrayList<>();
    body.path("positions").forEach(position -> positions.add(position.asInt()));
    Boundary what =
        new Boundary(
            Boundary.Kind.fromWord(Requests.field(body, "kind")),
            Requests.moment(body, "at", plant.clock().instant()),
            positions,
            Requests.fieldOr(body, "words", ""));
    plant.diagnoses().write(line, what, Requests.by(ctx));
    answer(ctx, line);
  }

  void withdraw(Context ctx) throws IOException {
    String reason = Requests.field(Requests.body(ctx), "reason");
    plant.diagnoses().withdraw(Requests.id(ctx), Requests.by(ctx), reason);
    ctx.json(Wire.object().put("withdrawn", true));
  }

  private void answer(Context ctx, String line) {
    Instant now = plant.clock().instant();
    ObjectNode answer = Wire.object().put("line", line);
    ArrayNode entries = answer.putArray("entries");
    for (LineEntry entry : plant.diagnoses().log(line, Span.since(now.minus(USUAL_LOG)))) {
      entries.insert(0, json(entry));
    }
    ctx.json(answer);
  }

  private ObjectNode json(LineEntry entry) {
    Boundary what = entry.what();
    ObjectNode node =
        Wire.object()
            .put("id", entry.id())
            .put("kind", what.kind().word())
            .put("kindWords", what.kind().words())
            .put("at", Wire.time(what.at(), plant.zone()))
            .put("words", what.words())
            .put("by", entry.written().by())
            .put("writtenAt", Wire.time(entry.written().at(), plant.zone()));
    what.positions().forEach(node.putArray("positions")::add);
    node.putNull("withdrawn");
    entry
        .withdrawn()
        .ifPresent(
            note ->
                node.putObject("withdrawn")
                    .put("by", note.by())
                    .put("why", note.why())
                    .put("at", Wire.time(note.at(), plant.zone())));
    return node;
  }
}
