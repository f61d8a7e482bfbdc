package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.gauge.calibration.Calibration;
import dev.filmward.gauge.calibration.CalibrationDoubts;
import dev.filmward.gauge.calibration.FilmScalings;
import dev.filmward.gauge.calibration.FittedVelocity;
import dev.filmward.gauge.calibration.GaugeSetting;
import dev.filmward.gauge.calibration.LayerScalings;
import dev.filmward.gauge.calibration.PieceReadings;
import dev.filmward.gauge.calibration.ScaleStep;
import dev.filmward.gauge.calibration.Scaling;
import dev.filmward.gauge.calibration.Scaling.Word;
import dev.filmward.gauge.calibration.VelocityHistory;
import dev.filmward.pipeline.LimitsProposal.PastAlarm;
import dev.filmward.pipeline.RescalingPreview;
import java.time.ZoneId;
import java.util.List;

/** How gauges, calibrations and re-scalings look as JSON. */
final class GaugeJson {
  private final ZoneId zone;

  GaugeJson(ZoneId zone) {
    this.zone = zone;
  }

  ObjectNode word(ObjectNode node, Word word) {
    return node.put("by", word.by())
        .put("reason", word.reason())
        .put("at", Wire.time(word.at(), zone));
  }

  ObjectNode setting(GaugeSetting setting) {
    ObjectNode node =
        Wire.object()
            .put("line", setting.line())
            .put("structure", setting.structure())
            .put("layer", setting.layer())
            .put("velocityMps", setting.velocity().mps())
            .put("offsetNs", setting.velocity().offsetNs())
            .put("since", Wire.time(setting.holdsFrom(), zone));
    Wire.number(node, "greatestUm", setting.greatestUm());
    return word(node, setting.word());
  }

  ObjectNode calibration(Calibration calibration) {
    ObjectNode node =
        Wire.object()
            .put("id", calibration.id())
            .put("gauge", calibration.subject().gauge())
            .put("structure", calibration.subject().structure())
            .put("layer", calibration.subject().layer())
            .put("resin", calibration.subject().resin());
    node.putObject("before")
        .put("velocityMps", calibration.before().mps())
        .put("offsetNs", calibration.before().offsetNs());
    addFound(node.putObject("found"), calibration.found());
    node.put("factor", calibration.scale().factor())
        .put("offsetUm", calibration.scale().offsetUm());
    calibration
        .temperature()
        .ifPresent(
            model ->
                node.put("temperatureC", model.atC())
                    .put("percentPerKelvin", model.percentPerKelvin()));
    ArrayNode pieces = node.putArray("pieces");
    calibration.pieces().forEach(each -> pieces.add(piece(each)));
    ArrayNode doubts = node.putArray("doubts");
    calibration.doubts().forEach(doubts::add);
    return word(node, calibration.word());
  }

  private static void addFound(ObjectNode node, FittedVelocity found) {
    node.put("velocityMps", found.velocity().mps())
        .put("uVelocityMps", found.uMps())
        .put("offsetNs", found.velocity().offsetNs())
        .put("uOffsetNs", found.uOffsetNs())
        .put("covariance", found.covariance())
        .put("degrees", found.degrees());
    Wire.number(node, "chiSquare", found.chiSquare());
    Wire.number(node, "chance", CalibrationDoubts.chance(found));
  }

  private static ObjectNode piece(PieceReadings each) {
    ObjectNode node =
        Wire.object()
            .put("name", each.piece().name())
            .put("thicknessUm", each.piece().thicknessUm())
            .put("expandedUm", each.piece().expandedUm())
            .put("k", each.piece().k())
            .put("material", each.piece().material())
            .put("howKnown", each.piece().howKnown())
            .put("kind", each.kind().word());
    ArrayNode readings = node.putArray("readings");
    each.values().forEach(value -> readings.add(value.doubleValue()));
    return node;
  }

  ObjectNode history(VelocityHistory history) {
    ObjectNode node = Wire.object().put("count", history.count()).put("wanders", history.wanders());
    Wire.number(node, "meanMps", history.meanMps());
    Wire.number(node, "uMeanMps", history.uMeanMps());
    Wire.number(node, "chiSquare", history.chiSquare());
    Wire.number(node, "birge", history.birge());
    Wire.number(node, "chance", history.chance());
    return node;
  }

  /** Versions of all layers, by layer and version. */
  ArrayNode scalings(FilmScalings film) {
    ArrayNode all = Wire.mapper().createArrayNode();
    film.byPosition().keySet().stream()
        .sorted()
        .forEach(position -> addVersions(all, position, film.of(position)));
    return all;
  }

  private void addVersions(ArrayNode all, int position, LayerScalings layer) {
    for (Scaling scaling : layer.versions()) {
      ObjectNode node =
          all.addObject()
              .put("position", position)
              .put("version", scaling.version())
              .put("takesBack", scaling.takesBack())
              .put("takenBack", layer.takenBack().contains(scaling.version()));
      scaling.calibrationId().ifPresent(id -> node.put("calibration", id));
      node.set("steps", steps(scaling.steps()));
      word(node, scaling.word());
    }
  }

  ArrayNode steps(List<ScaleStep> steps) {
    ArrayNode nodes = Wire.mapper().createArrayNode();
    for (ScaleStep step : steps) {
      ObjectNode node =
          nodes
              .addObject()
              .put("from", Wire.time(step.holdsFrom(), zone))
              .put("factor", step.scale().factor())
              .put("offsetUm", step.scale().offsetUm())
              .put("velocityMps", step.velocityMps());
      step.temperature()
          .ifPresent(
              model ->
                  node.put("temperatureC", model.atC())
                      .put("percentPerKelvin", model.percentPerKelvin()));
    }
    return nodes;
  }

  ObjectNode preview(RescalingPreview preview) {
    ObjectNode node =
        Wire.object()
            .put("samples", preview.samples())
            .put("left", preview.left())
            .put("withTemperature", preview.withTemperature());
    node.set("steps", steps(preview.steps()));
    ArrayNode means = node.putArray("means");
    for (RescalingPreview.Mean mean : preview.means()) {
      ObjectNode each = means.addObject();
      each.set("characteristic", Wire.characteristic(mean.characteristic()));
      Wire.number(each, "before", mean.before());
      Wire.number(each, "after", mean.after());
    }
    ArrayNode otherwise = node.putArray("limitsScaledOtherwise");
    preview.otherwise().forEach(otherwise::add);
    node.putNull("alarmsBefore").putNull("alarmsAfter");
    preview
        .alarms()
        .ifPresent(
            alarms -> {
              node.set("alarmsBefore", alarms(alarms.before()));
              node.set("alarmsAfter", alarms(alarms.after()));
            });
    return node;
  }

  private ArrayNode alarms(List<PastAlarm> alarms) {
    ArrayNode nodes = Wire.mapper().createArrayNode();
    for (PastAlarm alarm : alarms) {
      nodes
          .addObject()
          .put("title", alarm.title())
          .put("roll", alarm.first().roll())
          .put("sample", alarm.first().sample())
          .put("openedAt", Wire.time(alarm.openedAt(), zone));
    }
    return nodes;
  }
}
