package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.pipeline.HandoverDesk;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.ShiftNote;
import dev.filmward.store.ShiftNote.Kind;
import dev.filmward.store.ShiftNote.Settled;
import dev.filmward.store.ShiftNoteTable.Search;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.Optional;

/** Notes that people of a shift write, pinned to a line and a time. */
final class NoteResource {
  private static final int MOST = 200;
  private static final Duration OLDEST = Duration.ofDays(366);

  private final Plant plant;
  private final HandoverDesk desk;

  NoteResource(Plant plant) {
    this.plant = plant;
    this.desk = new HandoverDesk(plant);
  }

  void search(Context ctx) {
    Search search =
        new Search(Requests.textOr(ctx, "line", ""), Requests.textOr(ctx, "text", ""), MOST);
    ObjectNode answer = Wire.object();
    ArrayNode notes = answer.putArray("notes");
    plant.store().read(tables -> tables.shiftNotes().search(search)).stream()
        .map(this::json)
        .forEach(notes::add);
    ctx.json(answer);
  }

  void write(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    Instant now = plant.clock().instant();
    ShiftNote note =
        new ShiftNote(
            0,
            body.path("line").asText("").strip(),
            at(body, now),
            now,
            Requests.by(ctx, body),
            Requests.field(body, "text"),
            body.path("roll").asText("").strip(),
            kind(body),
            Optional.empty());
    ctx.json(json(desk.write(note)));
  }

  void settle(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    Settled settled =
        new Settled(
            plant.clock().instant(), Requests.by(ctx, body), Requests.field(body, "outcome"));
    ctx.json(json(desk.settle(Requests.id(ctx), settled)));
  }

  /** Now, or a moment of the last year: a note tells of what was, not of what will be. */
  private static Instant at(JsonNode body, Instant now) {
    String text = body.path("at").asText("").strip();
    try {
      Instant at = text.isEmpty() ? now : OffsetDateTime.parse(text).toInstant();
      if (at.isAfter(now) || at.isBefore(now.minus(OLDEST))) {
        throw new IllegalArgumentException(
            "\"at\" lies in the last " + OLDEST.toDays() + " days, not at " + text);
      }
      return at;
    } catch (DateTimeParseException e) {
      throw new IllegalArgumentException(
          "\"at\" is a time such as 2026-11-25T06:42:00+01:00, not \"" + text + "\"", e);
    }
  }

  private static Kind kind(JsonNode body) {
    String word = body.path("kind").asText("note");
    return switch (word) {
      case "note" -> Kind.NOTE;
      case "follow-up" -> Kind.FOLLOW_UP;
      default ->
          throw new IllegalArgumentException("\"kind\" is note or follow-up, not \"" + word + "\"");
    };
  }

  private ObjectNode json(ShiftNote note) {
    ObjectNode node =
        Wire.object()
            .put("id", note.id())
            .put("line", note.line())
            .put("at", Wire.time(note.at(), plant.zone()))
            .put("writtenAt", Wire.time(note.writtenAt(), plant.zone()))
            .put("by", note.by())
            .put("text", note.text())
            .put("roll", note.roll())
            .put("kind", note.kind() == Kind.NOTE ? "note" : "follow-up");
    if (note.settled().isPresent()) {
      node.putObject("settled")
          .put("at", Wire.time(note.settled().get().at(), plant.zone()))
          .put("by", note.settled().get().by())
          .put("outcome", note.settled().get().outcome());
    } else {
      node.putNull("settled");
    }
    return node;
  }
}
