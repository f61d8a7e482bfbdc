package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import dev.filmward.gauge.screen.Flag;
import dev.filmward.gauge.screen.ScreeningRules;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.ScreeningDesk.Suspect;
import dev.filmward.store.ScreeningVersion;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Screening as JSON. */
final class ScreeningJson {
  private final Plant plant;

  ScreeningJson(Plant plant) {
    this.plant = plant;
  }

  ObjectNode suspect(Suspect suspect) {
    Sample sample = suspect.screened().stored().sample();
    ObjectNode node =
        Wire.object()
            .put("id", suspect.screened().stored().id())
            .put("line", sample.key().line())
            .put("structure", sample.key().structure())
            .put("roll", sample.key().roll())
            .put("sample", sample.key().sample())
            .put("takenAt", Wire.time(sample.takenAt(), plant.zone()))
            .put("state", suspect.screened().state().map(state -> state.word()).orElse("charted"));
    ArrayNode flags = node.putArray("flags");
    suspect.screened().flags().forEach(flag -> flags.add(flag(flag)));
    ArrayNode lanes = node.putArray("lanes");
    for (int lane = 0; lane < sample.laneCount(); lane++) {
      lanes.add(sample.lane(lane));
    }
    addLayers(node.putArray("layers"), sample, suspect.usual());
    ArrayNode decisions = node.putArray("decisions");
    suspect
        .decisions()
        .forEach(
            decided ->
                decisions.add(decision(decided.decision()).put("state", decided.state().word())));
    return node;
  }

  private void addLayers(ArrayNode layers, Sample sample, List<Double> usual) {
    Optional<Structure> structure = plant.structures().find(sample.key().structure());
    for (int position = 1; position <= sample.layers(); position++) {
      ObjectNode layer = layers.addObject().put("position", position);
      Optional<ReportedLayer> reported = reported(structure, position);
      layer.put("name", reported.map(ReportedLayer::name).orElse("Layer " + position));
      ArrayNode roles = layer.putArray("roles");
      reported.ifPresent(
          known ->
              known
                  .members()
                  .forEach(member -> roles.add(member.role().name().toLowerCase(Locale.ROOT))));
      boolean isKnown = position <= usual.size() && !usual.get(position - 1).isNaN();
      layer.put("usual", isKnown ? usual.get(position - 1) : null);
      ArrayNode read = layer.putArray("read");
      for (int lane = 0; lane < sample.laneCount(); lane++) {
        read.add(sample.isMeasured(position, lane) ? sample.thicknessUm(position, lane) : null);
      }
    }
  }

  private static Optional<ReportedLayer> reported(Optional<Structure> structure, int position) {
    return structure
        .filter(film -> position <= film.reported().size())
        .map(film -> film.reported().get(position - 1));
  }

  private static ObjectNode flag(Flag flag) {
    ObjectNode node =
        Wire.object()
            .put("kind", flag.kind().word())
            .put("words", flag.kind().words())
            .put("strength", flag.strength().word())
            .put("evidence", flag.evidence());
    ArrayNode positions = node.putArray("positions");
    flag.positions().forEach(positions::add);
    ArrayNode lanes = node.putArray("lanes");
    flag.lanes().forEach(lanes::add);
    return node;
  }

  ObjectNode rules(ScreeningRules rules) {
    ObjectNode node = Wire.object();
    OptionalDouble mhz = rules.gaugeMhz();
    node.put("gaugeMhz", mhz.isPresent() ? (Double) mhz.getAsDouble() : null);
    ArrayNode kinds = node.putArray("kinds");
    rules
        .all()
        .forEach(
            (kind, treatment) ->
                kinds
                    .addObject()
                    .put("kind", kind.word())
                    .put("words", kind.words())
                    .put("treatment", treatment.word()));
    return node;
  }

  ObjectNode version(ScreeningVersion version) {
    ObjectNode node = rules(version.rules()).put("version", version.version());
    node.put("holdsFrom", Wire.time(version.holdsFrom(), plant.zone()));
    node.setAll(decision(version.decision()));
    return node;
  }

  private ObjectNode decision(Decision decision) {
    return Wire.object()
        .put("by", decision.author())
        .put("reason", decision.reason())
        .put("at", Wire.time(decision.at(), plant.zone()));
  }
}
