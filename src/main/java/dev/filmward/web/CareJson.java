package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.DoneCheck;
import dev.filmward.diagnosis.Cause;
import dev.filmward.diagnosis.Causes;
import dev.filmward.diagnosis.CheckPlan;
import dev.filmward.film.Structures;
import dev.filmward.store.AlarmDetails;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * What people did about an alarm, and what the plan asks of them, as JSON. The plan and the causes
 * are read once; for one request.
 */
final class CareJson {
  private final AlarmDetails details;
  private final Structures structures;
  private final ZoneId zone;
  private final CheckPlan plan;
  private final Causes causes;

  CareJson(Tables tables, Structures structures, ZoneId zone, AlarmDetails details) {
    this.details = details;
    this.structures = structures;
    this.zone = zone;
    this.plan = tables.checks().current();
    this.causes = tables.causes().current();
  }

  /** Adds to an alarm. */
  void add(ObjectNode node, Alarm alarm) {
    addOwner(node, alarm);
    addChecks(node, alarm);
    details
        .finding(alarm)
        .ifPresent(
            found ->
                ((ObjectNode) node.get("finding"))
                    .put("code", found.code())
                    .put("note", found.note()));
    ArrayNode comments = node.putArray("comments");
    details
        .comments(alarm)
        .forEach(
            comment ->
                comments
                    .addObject()
                    .put("words", comment.words())
                    .put("by", comment.by())
                    .put("at", time(comment.at())));
  }

  private void addOwner(ObjectNode node, Alarm alarm) {
    node.putNull("owner");
    details
        .owner(alarm)
        .ifPresent(
            owner ->
                node.putObject("owner")
                    .put("name", owner.owner())
                    .put("by", owner.by())
                    .put("why", owner.why())
                    .put("at", time(owner.at())));
  }

  private void addChecks(ObjectNode node, Alarm alarm) {
    List<DoneCheck> done = details.checks(alarm);
    Set<String> shown = new TreeSet<>();
    ArrayNode checks = node.putArray("checks");
    structures
        .find(alarm.subject().structure())
        .ifPresent(known -> addAll(checks, plan.of(alarm.subject().pattern(known)), done, shown));
    ArrayNode byCause = node.putArray("causeChecks");
    for (Cause cause : causes.active()) {
      List<String> planned = plan.byCause().getOrDefault(cause.code(), List.of());
      if (!planned.isEmpty()) {
        ObjectNode topic =
            byCause.addObject().put("code", cause.code()).put("cause", cause.words());
        addAll(topic.putArray("checks"), planned, done, shown);
      }
    }
    List<String> gone =
        done.stream()
            .map(DoneCheck::words)
            .distinct()
            .filter(words -> !shown.contains(words))
            .toList();
    addAll(node.putArray("formerChecks"), gone, done, shown);
  }

  private void addAll(
      ArrayNode array, List<String> planned, List<DoneCheck> done, Set<String> shown) {
    for (String words : planned) {
      shown.add(words);
      ArrayNode times = array.addObject().put("words", words).putArray("done");
      done.stream()
          .filter(check -> check.words().equals(words))
          .forEach(
              check ->
                  times
                      .addObject()
                      .put("outcome", check.outcome().word())
                      .put("note", check.note())
                      .put("by", check.by())
                      .put("at", time(check.at())));
    }
  }

  private String time(Instant instant) {
    return Wire.time(instant, zone);
  }
}
