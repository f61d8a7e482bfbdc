package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.film.Structure;
import dev.filmward.gauge.study.LayerOutcome;
import dev.filmward.gauge.study.StudyPlan;
import dev.filmward.gauge.study.StudyPlan.PlannedLayer;
import dev.filmward.gauge.study.StudyStep;
import dev.filmward.pipeline.PieceResults;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.StudyDesk;
import dev.filmward.pipeline.StudyDesk.Cell;
import dev.filmward.pipeline.StudyDesk.Look;
import dev.filmward.pipeline.StudyDesk.Taken;
import dev.filmward.store.StoredStudy;
import dev.filmward.store.StoredStudy.Entry;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** How gauge studies that are kept look as JSON. */
final class StudyJson {
  private final Plant plant;

  StudyJson(Plant plant) {
    this.plant = plant;
  }

  /** What can be studied of a film. */
  static ObjectNode structure(Structure structure) {
    ObjectNode node = Wire.object().put("code", structure.code()).put("name", structure.name());
    ArrayNode layers = node.putArray("layers");
    structure.reported().forEach(layer -> layers.add(layer.name()));
    return node;
  }

  static ObjectNode taken(Taken taken) {
    return Wire.object()
        .put("new", taken.fresh())
        .put("known", taken.known())
        .put("corrected", taken.corrected());
  }

  /** With the plant's clock, for pages that show times. */
  ObjectNode stamped() {
    return Wire.object()
        .put("now", Wire.time(plant.clock().instant(), plant.zone()))
        .put("zone", plant.zone().getId());
  }

  ObjectNode head(StoredStudy study, int filled) {
    StudyPlan plan = study.plan();
    ObjectNode node =
        Wire.object()
            .put("id", study.id())
            .put("kind", plan.kind().word())
            .put("gauge", plan.gauge())
            .put("structure", plan.structure())
            .put("purpose", plan.purpose())
            .put("trials", plan.trials())
            .put("seed", plan.seed())
            .put("by", study.plannedBy())
            .put("at", Wire.time(study.plannedAt(), plant.zone()))
            .put("state", study.ending().map(one -> one.end().word()).orElse("open"));
    node.set("ended", study.ending().map(this::ending).orElse(null));
    strings(node.putArray("parts"), plan.parts());
    strings(node.putArray("operators"), plan.operators());
    ArrayNode pieces = node.putArray("pieces");
    ArrayNode dates = node.putArray("dates");
    plan.known()
        .ifPresent(
            known -> {
              known.pieces().forEach(piece -> pieces.add(KnownPieceJson.piece(piece)));
              known.dates().forEach(date -> dates.add(date.toString()));
            });
    node.put("perDate", plan.perDate());
    ArrayNode layers = node.putArray("layers");
    plan.layers().forEach(layer -> layers.add(layer(layer)));
    return node.put("readings", plan.readings()).put("entered", filled);
  }

  /** With its readings in the order in which they are measured, and what they come to. */
  ObjectNode whole(Look look) {
    ObjectNode node = stamped();
    node.setAll(head(look.study(), look.entries().size()));
    node.put("corrections", look.corrections());
    ArrayNode steps = node.putArray("steps");
    for (StudyStep step : StudyStep.inOrder(look.study().plan())) {
      steps.add(step(step, look));
    }
    return look.study().plan().known().isPresent() ? known(node, look) : crossed(node, look);
  }

  private static ObjectNode known(ObjectNode node, Look look) {
    StudyPlan plan = look.study().plan();
    PieceResults results = PieceResults.of(look);
    node.putArray("studies");
    ArrayNode refused = node.putArray("refused");
    if (!results.reasons().isEmpty()) {
      String layer = plan.layers().get(0).name();
      strings(refused.addObject().put("layer", layer).putArray("reasons"), results.reasons());
    }
    node.set("references", GaugeStudyJson.references(results.references()));
    node.set("judged", KnownPieceJson.judged(results, plan));
    return node;
  }

  private static ObjectNode crossed(ObjectNode node, Look look) {
    List<LayerOutcome> outcomes = StudyDesk.outcomes(look);
    node.set("studies", GaugeStudyJson.studies(outcomes).get("studies"));
    ArrayNode refused = node.putArray("refused");
    for (LayerOutcome outcome : outcomes) {
      if (outcome instanceof LayerOutcome.Refused fault) {
        strings(
            refused.addObject().put("layer", fault.layer()).putArray("reasons"), fault.reasons());
      }
    }
    node.putArray("references");
    return node.putNull("judged");
  }

  private static ObjectNode step(StudyStep step, Look look) {
    ObjectNode node =
        Wire.object()
            .put("part", step.part())
            .put("operator", step.operator())
            .put("trial", step.trial())
            .put(
                "date",
                look.study().plan().dateOf(step.trial()).map(LocalDate::toString).orElse(null));
    ArrayNode um = node.putArray("um");
    for (PlannedLayer layer : look.study().plan().layers()) {
      @Nullable Entry entry = look.entries().get(new Cell(step, layer.name()));
      if (entry == null) {
        um.addNull();
      } else {
        um.add(entry.um());
      }
    }
    return node;
  }

  private ObjectNode ending(StoredStudy.Ending ending) {
    return Wire.object()
        .put("by", ending.by())
        .put("at", Wire.time(ending.at(), plant.zone()))
        .put("words", ending.words());
  }

  private static ObjectNode layer(PlannedLayer layer) {
    ObjectNode node = Wire.object().put("name", layer.name());
    Wire.number(node, "lower", layer.limits().lower());
    Wire.number(node, "upper", layer.limits().upper());
    return node;
  }

  private static void strings(ArrayNode array, List<String> texts) {
    texts.forEach(array::add);
  }
}
