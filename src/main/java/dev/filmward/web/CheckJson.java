package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.gauge.calibration.CheckReading;
import dev.filmward.gauge.calibration.CheckStandard;
import dev.filmward.gauge.calibration.Linearity;
import dev.filmward.pipeline.CheckDesk;
import dev.filmward.pipeline.CheckDesk.All;
import dev.filmward.pipeline.CheckDesk.Charted;
import dev.filmward.pipeline.CheckDesk.Doubt;
import java.time.ZoneId;

/** How check standards look as JSON. */
final class CheckJson {
  private final ZoneId zone;

  CheckJson(ZoneId zone) {
    this.zone = zone;
  }

  ObjectNode all(All all) {
    ObjectNode answer = Wire.object();
    ArrayNode standards = answer.putArray("standards");
    all.standards().forEach(each -> standards.add(standard(each)));
    ArrayNode linearity = answer.putArray("linearity");
    all.linearity().forEach((gauge, line) -> linearity.add(linearity(gauge, line)));
    ArrayNode doubts = answer.putArray("doubtful");
    all.doubts().forEach(each -> doubts.add(doubt(each)));
    return answer;
  }

  private ObjectNode standard(Charted charted) {
    CheckStandard standard = charted.standard();
    ObjectNode node =
        Wire.object()
            .put("id", standard.id())
            .put("gauge", standard.gauge())
            .put("name", standard.film().name())
            .put("thicknessUm", standard.film().thicknessUm())
            .put("expandedUm", standard.film().expandedUm())
            .put("k", standard.film().k())
            .put("material", standard.film().material())
            .put("basis", charted.chart().basis().word());
    Wire.number(node, "sigmaUm", standard.sigmaUm());
    Wire.number(node, "centreUm", charted.chart().centreUm());
    Wire.number(node, "chartSigmaUm", charted.chart().sigmaUm());
    Wire.number(node, "greatestMovingRangeUm", charted.chart().greatestMovingRangeUm());
    Wire.number(node, "biasUm", charted.chart().bias().um());
    Wire.number(node, "uBiasUm", charted.chart().bias().standardUm());
    node.put("biasIsReal", charted.chart().bias().isReal());
    ArrayNode readings = node.putArray("readings");
    for (CheckReading reading : charted.readings()) {
      readings.add(reading(reading).put("failed", charted.chart().isBeyond(reading.um())));
    }
    return new GaugeJson(zone).word(node, standard.word());
  }

  private ObjectNode reading(CheckReading reading) {
    return Wire.object()
        .put("id", reading.id())
        .put("at", Wire.time(reading.at(), zone))
        .put("um", reading.um())
        .put("by", reading.by())
        .put("note", reading.note());
  }

  private static ObjectNode linearity(String gauge, Linearity line) {
    ObjectNode node = Wire.object().put("gauge", gauge).put("isReal", line.isReal());
    Wire.number(node, "slope", line.slope());
    Wire.number(node, "standardError", line.standardError());
    return node;
  }

  ObjectNode doubt(CheckDesk.Doubt doubt) {
    ObjectNode node = Wire.object().put("check", doubt.failed().id()).put("gauge", doubt.gauge());
    node.put("failedAt", Wire.time(doubt.failed().at(), zone)).put("um", doubt.failed().um());
    node.putNull("after").putNull("before").putNull("verdict");
    doubt.after().ifPresent(moment -> node.put("after", Wire.time(moment, zone)));
    doubt.before().ifPresent(moment -> node.put("before", Wire.time(moment, zone)));
    addSamples(node, doubt);
    doubt
        .verdict()
        .ifPresent(
            verdict ->
                new GaugeJson(zone)
                    .word(
                        node.putObject("verdict").put("verdict", verdict.verdict()),
                        verdict.word()));
    return node;
  }

  private static void addSamples(ObjectNode node, Doubt doubt) {
    ArrayNode samples = node.putArray("samples");
    doubt
        .samples()
        .forEach((line, count) -> samples.addObject().put("line", line).put("count", count));
  }
}
