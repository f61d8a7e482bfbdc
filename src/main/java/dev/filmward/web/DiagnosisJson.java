package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.diagnosis.Ambiguity;
import dev.filmward.diagnosis.Boundary;
import dev.filmward.diagnosis.Candidate;
import dev.filmward.diagnosis.Causes;
import dev.filmward.diagnosis.Evidence;
import dev.filmward.diagnosis.LayerMove;
import dev.filmward.diagnosis.Observation;
import dev.filmward.diagnosis.Since;
import dev.filmward.diagnosis.Suspect;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.BeforeAfter;
import dev.filmward.pipeline.Explained;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A diagnosis as JSON. For one request. */
final class DiagnosisJson {
  private final Structure structure;
  private final Causes causes;
  private final ZoneId zone;

  DiagnosisJson(Structure structure, Causes causes, ZoneId zone) {
    this.structure = structure;
    this.causes = causes;
    this.zone = zone;
  }

  ObjectNode of(Explained explained) {
    ObjectNode node =
        Wire.object()
            .put("from", time(explained.window().from()))
            .put("to", time(explained.window().to()))
            .put("samples", explained.samples());
    if (explained.reference().isPresent()) {
      node.put("limitsVersion", explained.reference().getAsInt());
    } else {
      node.putNull("limitsVersion");
    }
    ArrayNode changed = node.putArray("changed");
    explained.diagnosis().changed().forEach(one -> changed.add(json(one)));
    ArrayNode candidates = node.putArray("candidates");
    explained.diagnosis().candidates().forEach(one -> candidates.add(json(one)));
    ArrayNode ambiguous = node.putArray("ambiguous");
    for (Ambiguity one : explained.diagnosis().ambiguous()) {
      ObjectNode entry = ambiguous.addObject().put("words", one.words());
      one.codes().forEach(entry.putArray("codes")::add);
    }
    explained.diagnosis().notes().forEach(node.putArray("notes")::add);
    node.putNull("sides");
    explained.sides().ifPresent(sides -> node.set("sides", json(sides)));
    return node;
  }

  private ObjectNode json(Observation one) {
    ObjectNode node = Wire.object().put("shape", one.shape().word()).put("words", one.words());
    addLayers(node, one.positions());
    one.lanes().forEach(node.putArray("lanes")::add);
    addSince(node, one.since());
    ArrayNode boundaries = node.putArray("boundaries");
    for (Boundary boundary : one.boundaries()) {
      boundaries
          .addObject()
          .put("kind", boundary.kind().word())
          .put("kindWords", boundary.kind().words())
          .put("at", time(boundary.at()))
          .put("words", boundary.words());
    }
    ArrayNode moves = node.putArray("moves");
    one.moves().forEach(move -> moves.add(json(move)));
    return node;
  }

  private ObjectNode json(LayerMove move) {
    return Wire.object()
        .put("position", move.position())
        .put("name", name(move.position()))
        .put("percent", move.percent())
        .put("um", move.um())
        .put("sharePoints", move.sharePoints())
        .put("z", move.z())
        .put("clear", move.isClear());
  }

  private ObjectNode json(Candidate one) {
    ObjectNode node =
        Wire.object()
            .put("code", one.signature().code())
            .put("name", one.signature().name())
            .put("kind", one.signature().kind().word())
            .put("score", one.score());
    addLayers(node, one.positions());
    one.lanes().forEach(node.putArray("lanes")::add);
    addSince(node, one.since());
    ArrayNode evidence = node.putArray("evidence");
    for (Evidence piece : one.evidence()) {
      evidence
          .addObject()
          .put("words", piece.words())
          .put("asked", piece.condition().words())
          .put("value", piece.value())
          .put("degree", piece.degree());
    }
    ArrayNode suspects = node.putArray("causes");
    for (Suspect suspect : one.signature().causes()) {
      suspects
          .addObject()
          .put("code", suspect.code())
          .put("words", suspect.words())
          .put("choice", causes.find(suspect.code()).isPresent());
    }
    one.signature().checks().forEach(node.putArray("checks")::add);
    return node.put("tellsApart", one.signature().tellsApart());
  }

  private ObjectNode json(BeforeAfter sides) {
    ObjectNode node =
        Wire.object()
            .put("at", time(sides.at()))
            .put("samplesBefore", sides.before())
            .put("samplesAfter", sides.after());
    ArrayNode rows = node.putArray("rows");
    for (BeforeAfter.Row row : sides.rows()) {
      ObjectNode entry = Wire.characteristic(row.characteristic());
      entry.set("spec", Wire.spec(structure.spec(row.characteristic())));
      addRoles(entry, row.characteristic().position());
      addSide(entry, "before", row.before());
      addSide(entry, "after", row.after());
      rows.add(entry);
    }
    return node;
  }

  private void addRoles(ObjectNode entry, int position) {
    ArrayNode roles = entry.putArray("roles");
    if (position > 0) {
      structure
          .reported()
          .get(position - 1)
          .members()
          .forEach(layer -> roles.add(layer.role().name().toLowerCase(Locale.ROOT)));
    }
  }

  private static void addSide(ObjectNode entry, String name, Optional<BeforeAfter.Side> side) {
    entry.putNull(name);
    side.ifPresent(
        there -> {
          ObjectNode node =
              entry
                  .putObject(name)
                  .put("mean", there.meanUm())
                  .put("deviation", there.deviationUm());
          ArrayNode lanes = node.putArray("lanes");
          there.laneUm().forEach((lane, um) -> lanes.addObject().put("lane", lane).put("um", um));
        });
  }

  private void addLayers(ObjectNode node, List<Integer> positions) {
    ArrayNode layers = node.putArray("layers");
    for (int position : positions) {
      layers.addObject().put("position", position).put("name", name(position));
    }
  }

  private void addSince(ObjectNode node, Optional<Since> since) {
    node.putNull("since");
    since.ifPresent(
        begun ->
            node.putObject("since")
                .put("at", time(begun.at()))
                .put("notBefore", begun.notBefore().map(this::time).orElse(null))
                .put("notAfter", time(begun.notAfter())));
  }

  private String name(int position) {
    return position == 0 ? "Total" : structure.reported().get(position - 1).name();
  }

  private String time(Instant instant) {
    return Wire.time(instant, zone);
  }
}
