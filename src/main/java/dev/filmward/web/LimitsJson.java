package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.chart.LimitsState;
import dev.filmward.chart.LimitsVersion;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.chart.MeanRangeLimits;
import dev.filmward.pipeline.BaselineTrust;
import dev.filmward.pipeline.LimitsProposal;
import dev.filmward.pipeline.LimitsProposal.PastAlarm;
import dev.filmward.pipeline.LimitsProposal.PointToLookAt;
import dev.filmward.pipeline.LimitsProposal.Proposed;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;

/** How limits and proposals look as JSON. */
final class LimitsJson {
  private final ZoneId zone;

  LimitsJson(ZoneId zone) {
    this.zone = zone;
  }

  /**
   * Versions first to last; one that a later one has taken the place of is retired.
   *
   * @param otherwise numbers of those that were computed of readings at another velocity
   */
  List<ObjectNode> versions(List<LimitsVersion> versions, Set<Integer> otherwise) {
    List<ObjectNode> nodes = new ArrayList<>();
    for (int i = 0; i < versions.size(); i++) {
      ObjectNode node = version(versions.get(i));
      node.put("scaledOtherwise", otherwise.contains(versions.get(i).version()));
      if (i < versions.size() - 1) {
        node.put("state", LimitsState.RETIRED.word());
      }
      nodes.add(node);
    }
    return nodes;
  }

  ObjectNode proposal(LimitsProposal proposal) {
    ObjectNode node = Wire.object();
    ArrayNode characteristics = node.putArray("characteristics");
    proposal.characteristics().forEach(each -> characteristics.add(proposed(each)));
    ArrayNode current = node.putArray("alarmsUnderCurrent");
    proposal.underCurrent().forEach(alarm -> current.add(alarm(alarm)));
    ArrayNode proposed = node.putArray("alarmsUnderProposed");
    proposal.underProposed().forEach(alarm -> proposed.add(alarm(alarm)));
    return node;
  }

  private ObjectNode version(LimitsVersion version) {
    ObjectNode node =
        Wire.object()
            .put("version", version.version())
            .put("state", version.state().word())
            .put("holdsFrom", Wire.time(version.holdsFrom(), zone))
            .put("author", version.decision().author())
            .put("reason", version.decision().reason())
            .put("subgroups", version.baseline().subgroups())
            .put("excluded", version.baseline().excluded())
            .put("baselineFrom", Wire.time(version.baseline().from(), zone))
            .put("baselineTo", Wire.time(version.baseline().to(), zone));
    version.retiredAt().ifPresent(moment -> node.put("retiredAt", Wire.time(moment, zone)));
    addLimits(node, version.limits());
    ArrayNode changes = node.putArray("changes");
    version.changes().forEach(change -> changes.add(change(change)));
    return node;
  }

  private ObjectNode change(StateChange change) {
    return Wire.object()
        .put("state", change.state().word())
        .put("by", change.decision().author())
        .put("reason", change.decision().reason())
        .put("at", Wire.time(change.decision().at(), zone));
  }

  private ObjectNode proposed(Proposed proposed) {
    ObjectNode node =
        Wire.object().put("subgroups", proposed.subgroups()).put("excluded", proposed.excluded());
    node.set("characteristic", Wire.characteristic(proposed.characteristic()));
    node.putNull("current").putNull("proposed");
    proposed
        .current()
        .ifPresent(
            held ->
                addLimits(node.putObject("current").put("version", held.version()), held.limits()));
    proposed.proposed().ifPresent(limits -> addLimits(node.putObject("proposed"), limits));
    ArrayNode points = node.putArray("pointsToLookAt");
    proposed.pointsToLookAt().forEach(point -> points.add(point(point)));
    ArrayNode warnings = node.putArray("warnings");
    proposed.warnings().forEach(warnings::add);
    node.putNull("autocorrelation");
    proposed.trust().ifPresent(trust -> addTrust(node.putObject("autocorrelation"), trust));
    return node;
  }

  private static void addTrust(ObjectNode node, BaselineTrust trust) {
    node.put("lag1", trust.neighbours().lag1())
        .put("standardError", trust.neighbours().standardError())
        .put("strong", trust.isStrong())
        .put("spreadFactor", trust.spreadFactor())
        .put("falseAlarmsPer1000", trust.falseAlarmsPer1000());
    ArrayNode residuals = node.putArray("residuals");
    for (OptionalDouble each : trust.residuals()) {
      each.ifPresentOrElse(residuals::add, residuals::addNull);
    }
    ArrayNode beyond = node.putArray("residualsBeyond");
    trust
        .beyond()
        .forEach(key -> beyond.addObject().put("roll", key.roll()).put("sample", key.sample()));
  }

  private ObjectNode point(PointToLookAt point) {
    ObjectNode node =
        Wire.object()
            .put("roll", point.sample().roll())
            .put("sample", point.sample().sample())
            .put("takenAt", Wire.time(point.takenAt(), zone));
    node.set("signals", Wire.signals(point.signals()));
    return node;
  }

  private ObjectNode alarm(PastAlarm alarm) {
    return Wire.object()
        .put("title", alarm.title())
        .put("roll", alarm.first().roll())
        .put("sample", alarm.first().sample())
        .put("openedAt", Wire.time(alarm.openedAt(), zone));
  }

  private static void addLimits(ObjectNode node, MeanRangeLimits limits) {
    node.put("centre", limits.centre()).put("sigma", limits.sigmaWithin());
  }
}
