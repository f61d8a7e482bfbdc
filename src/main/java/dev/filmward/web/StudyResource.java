package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.film.Structure;
import dev.filmward.gauge.study.StudyPlan;
import dev.filmward.intake.FileRefused;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.StudyDesk;
import dev.filmward.pipeline.StudyDesk.Given;
import dev.filmward.pipeline.StudyDesk.Sender;
import dev.filmward.pipeline.StudyDesk.Taken;
import dev.filmward.store.StoredStudy;
import dev.filmward.store.StoredStudy.End;
import dev.filmward.store.StoredStudy.Ending;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.NoSuchElementException;

/** Gauge studies: planned, measured, ended. */
final class StudyResource {
  private static final int MOST_STUDIES = 200;
  private static final long LARGEST_FILE = 32L << 20;

  private final Plant plant;
  private final StudyDesk desk;
  private final StudyJson json;

  StudyResource(Plant plant) {
    this.plant = plant;
    this.desk = new StudyDesk(plant);
    this.json = new StudyJson(plant);
  }

  void list(Context ctx) {
    ObjectNode answer = json.stamped();
    ArrayNode studies = answer.putArray("studies");
    for (StoredStudy study : desk.newest(MOST_STUDIES)) {
      studies.add(json.head(study, desk.filled(study.id())));
    }
    ArrayNode structures = answer.putArray("structures");
    plant.structures().all().forEach(one -> structures.add(StudyJson.structure(one)));
    answer.set("pieces", KnownPieceJson.ofGaugeRoom(plant));
    ctx.json(answer);
  }

  void get(Context ctx) {
    ctx.json(json.whole(desk.look(Requests.id(ctx))));
  }

  void plan(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    StudyPlan plan =
        StudyRequests.plan(body, structure(Requests.field(body, "structure")), seed(body));
    StoredStudy study = desk.plan(plan, Requests.by(ctx, body));
    ctx.json(json.head(study, 0));
  }

  void enter(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    List<Given> given = new ArrayList<>();
    for (JsonNode each : Requests.array(body, "readings")) {
      given.add(StudyRequests.given(each));
    }
    Sender sender = new Sender(Requests.by(ctx, body), Requests.fieldOr(body, "why", ""));
    ctx.json(StudyJson.taken(desk.enter(Requests.id(ctx), given, sender)));
  }

  void enterFile(Context ctx) throws IOException, FileRefused {
    String name = Requests.textOr(ctx, "name", "the file");
    Sender sender = new Sender(Requests.by(ctx), Requests.textOr(ctx, "why", ""));
    try (InputStream body = new BoundedStream(ctx.bodyInputStream(), LARGEST_FILE)) {
      Taken taken = desk.enterFile(Requests.id(ctx), body, name, sender);
      ctx.json(StudyJson.taken(taken));
    }
  }

  void finish(Context ctx) throws IOException {
    end(ctx, End.FINISHED);
  }

  void abandon(Context ctx) throws IOException {
    end(ctx, End.ABANDONED);
  }

  private void end(Context ctx, End end) throws IOException {
    JsonNode body = Requests.body(ctx);
    String words = Requests.field(body, end == End.FINISHED ? "conclusion" : "reason");
    Ending ending = new Ending(end, Requests.by(ctx, body), plant.clock().instant(), words);
    long id = Requests.id(ctx);
    ctx.json(json.head(desk.end(id, ending), desk.filled(id)));
  }

  private Structure structure(String code) {
    return plant
        .structures()
        .find(code)
        .orElseThrow(() -> new NoSuchElementException("no structure \"" + code + "\""));
  }

  /** One from the clock where none is given; it is kept, so the order can be told again. */
  private long seed(JsonNode body) {
    JsonNode seed = body.path("seed");
    return seed.isIntegralNumber() ? seed.asLong() : plant.clock().instant().toEpochMilli();
  }
}
