package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.intake.StructuresFault;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.StructureDesk;
import dev.filmward.pipeline.StructureDesk.Word;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.util.Optional;

/** The structures of films and their versions. */
final class StructureResource {
  private static final long LARGEST = 4L << 20;

  private final Plant plant;
  private final StructureDesk desk;
  private final StructureJson json;

  StructureResource(Plant plant) {
    this.plant = plant;
    this.desk = new StructureDesk(plant);
    this.json = new StructureJson(plant.zone());
  }

  void list(Context ctx) {
    ObjectNode answer =
        Wire.object()
            .put("now", Wire.time(plant.clock().instant(), plant.zone()))
            .put("zone", plant.zone().getId())
            .put("newest", desk.newest());
    ArrayNode structures = answer.putArray("structures");
    desk.all().forEach(known -> structures.add(json.of(known)));
    ctx.json(answer);
  }

  void preview(Context ctx) throws IOException, StructuresFault {
    ctx.json(json.preview(desk.preview(Requests.text(ctx, "name"), body(ctx))));
  }

  void keep(Context ctx) throws IOException, StructuresFault {
    Optional<Instant> from = Requests.momentOf(ctx, "holdsFrom");
    Optional<Long> seen = Requests.number(ctx, "seen");
    String why = Requests.textOr(ctx, "why", "");
    String name = Requests.text(ctx, "name");
    desk.keep(name, body(ctx), new Word(Requests.by(ctx), why, from, seen));
    ObjectNode answer = Wire.object();
    ArrayNode codes = answer.putArray("structures");
    plant.structures().all().forEach(structure -> codes.add(structure.code()));
    ctx.json(answer);
  }

  void takeBack(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    desk.takeBack(
        Requests.field(body, "code"),
        Requests.wholeNumber(body, "version"),
        Requests.by(ctx, body),
        Requests.field(body, "reason"));
    list(ctx);
  }

  private static byte[] body(Context ctx) throws IOException {
    try (InputStream body = new BoundedStream(ctx.bodyInputStream(), LARGEST)) {
      return body.readAllBytes();
    }
  }
}
