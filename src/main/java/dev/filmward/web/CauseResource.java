package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.diagnosis.Cause;
import dev.filmward.diagnosis.Causes;
import dev.filmward.diagnosis.CheckPlan;
import dev.filmward.diagnosis.Pattern;
import dev.filmward.diagnosis.Revision;
import dev.filmward.pipeline.CauseBook;
import dev.filmward.pipeline.Plant;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The causes to choose from and the plan of first checks, each in versions. */
final class CauseResource {
  private final Plant plant;

  CauseResource(Plant plant) {
    this.plant = plant;
  }

  void causes(Context ctx) {
    ctx.json(
        plant
            .store()
            .read(
                tables -> {
                  ObjectNode answer = Wire.object();
                  ArrayNode causes = answer.putArray("causes");
                  tables.causes().current().all().forEach(cause -> causes.add(json(cause)));
                  answer.put("most", Causes.MOST_ACTIVE);
                  return versions(answer, tables.causes().revisions());
                }));
  }

  void keepCauses(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    List<Cause> causes = new ArrayList<>();
    for (JsonNode cause : Requests.array(body, "causes")) {
      causes.add(
          new Cause(
              Requests.field(cause, "code"),
              Requests.field(cause, "words"),
              Cause.Standing.fromWord(Requests.field(cause, "standing"))));
    }
    plant.causeBook().keep(new Causes(causes), change(ctx, body));
    causes(ctx);
  }

  void checks(Context ctx) {
    ctx.json(
        plant
            .store()
            .read(
                tables -> versions(json(tables.checks().current()), tables.checks().revisions())));
  }

  void keepChecks(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    Map<Pattern, List<String>> byPattern = new EnumMap<>(Pattern.class);
    for (JsonNode topic : Requests.array(body, "patterns")) {
      byPattern.put(Pattern.fromWord(Requests.field(topic, "pattern")), texts(topic));
    }
    Map<String, List<String>> byCause = new LinkedHashMap<>();
    for (JsonNode topic : Requests.array(body, "causes")) {
      byCause.put(Requests.field(topic, "code"), texts(topic));
    }
    plant.causeBook().keep(new CheckPlan(byPattern, byCause), change(ctx, body));
    checks(ctx);
  }

  private static CauseBook.Change change(Context ctx, JsonNode body) {
    return new CauseBook.Change(
        Requests.wholeNumber(body, "version"),
        Requests.by(ctx, body),
        Requests.field(body, "reason"));
  }

  private static List<String> texts(JsonNode topic) {
    List<String> texts = new ArrayList<>();
    Requests.array(topic, "checks").forEach(check -> texts.add(check.asText().strip()));
    return texts;
  }

  private static ObjectNode json(Cause cause) {
    return Wire.object()
        .put("code", cause.code())
        .put("words", cause.words())
        .put("standing", cause.standing().word());
  }

  private static ObjectNode json(CheckPlan plan) {
    ObjectNode answer = Wire.object();
    ArrayNode patterns = answer.putArray("patterns");
    plan.byPattern()
        .forEach(
            (pattern, checks) -> {
              ObjectNode topic =
                  patterns.addObject().put("pattern", pattern.word()).put("words", pattern.words());
              checks.forEach(topic.putArray("checks")::add);
            });
    ArrayNode causes = answer.putArray("causes");
    plan.byCause()
        .forEach(
            (code, checks) ->
                checks.forEach(causes.addObject().put("code", code).putArray("checks")::add));
    return answer;
  }

  private ObjectNode versions(ObjectNode answer, List<Revision> revisions) {
    return Wire.versions(answer, revisions, plant.zone());
  }
}
