package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.diagnosis.Condition;
import dev.filmward.diagnosis.Revision;
import dev.filmward.diagnosis.Signature;
import dev.filmward.diagnosis.Signatures;
import dev.filmward.diagnosis.Statistic;
import dev.filmward.diagnosis.Suspect;
import dev.filmward.pipeline.CauseBook.Change;
import dev.filmward.pipeline.Plant;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** The signatures that diagnoses look for, in versions. */
final class SignatureResource {
  private final Plant plant;

  SignatureResource(Plant plant) {
    this.plant = plant;
  }

  void get(Context ctx) {
    ctx.json(
        plant
            .store()
            .read(tables -> json(tables.signatures().current(), tables.signatures().revisions())));
  }

  /** {@code {"version", "reason", "signatures"}}: all of them; {@code version} is the one seen. */
  void keep(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    List<Signature> signatures = new ArrayList<>();
    for (JsonNode one : Requests.array(body, "signatures")) {
      signatures.add(signature(one));
    }
    plant
        .diagnoses()
        .keep(
            new Signatures(signatures),
            new Change(
                Requests.wholeNumber(body, "version"),
                Requests.by(ctx),
                Requests.field(body, "reason")));
    get(ctx);
  }

  private static Signature signature(JsonNode node) {
    List<Condition> conditions = new ArrayList<>();
    for (JsonNode one : Requests.array(node, "conditions")) {
      conditions.add(
          Condition.of(
              Requests.field(one, "statistic"),
              Requests.field(one, "comparison"),
              number(one, "threshold"),
              number(one, "weight"),
              Requests.field(one, "role")));
    }
    List<Suspect> causes = new ArrayList<>();
    for (JsonNode one : Requests.array(node, "causes")) {
      causes.add(new Suspect(Requests.field(one, "code"), Requests.field(one, "words")));
    }
    List<String> checks = new ArrayList<>();
    Requests.array(node, "checks").forEach(check -> checks.add(check.asText().strip()));
    return new Signature(
        Requests.field(node, "code"),
        Requests.field(node, "name"),
        Signature.Kind.fromWord(Requests.field(node, "kind")),
        conditions,
        causes,
        checks,
        Requests.field(node, "tellsApart"));
  }

  private static double number(JsonNode node, String name) {
    JsonNode value = node.path(name);
    if (!value.isNumber()) {
      throw new IllegalArgumentException("\"" + name + "\" of a condition is a number");
    }
    return value.asDouble();
  }

  private ObjectNode json(Signatures signatures, List<Revision> revisions) {
    ObjectNode answer = Wire.object();
    ArrayNode all = answer.putArray("signatures");
    signatures.all().forEach(signature -> all.add(json(signature)));
    ArrayNode statistics = answer.putArray("statistics");
    for (Statistic statistic : Statistic.values()) {
      statistics
          .addObject()
          .put("word", statistic.word())
          .put("unit", statistic.unit())
          .put("meaning", statistic.meaning())
          .put("facet", statistic.facet().words());
    }
    return Wire.versions(answer, revisions, plant.zone());
  }

  private static ObjectNode json(Signature signature) {
    ObjectNode node =
        Wire.object()
            .put("code", signature.code())
            .put("name", signature.name())
            .put("kind", signature.kind().word());
    ArrayNode conditions = node.putArray("conditions");
    for (Condition condition : signature.conditions()) {
      conditions
          .addObject()
          .put("statistic", condition.statistic().word())
          .put("comparison", condition.comparison().word())
          .put("threshold", condition.threshold())
          .put("weight", condition.weight())
          .put("role", condition.role().word());
    }
    ArrayNode causes = node.putArray("causes");
    signature
        .causes()
        .forEach(
            suspect ->
                causes.addObject().put("code", suspect.code()).put("words", suspect.words()));
    signature.checks().forEach(node.putArray("checks")::add);
    return node.put("tellsApart", signature.tellsApart());
  }
}
