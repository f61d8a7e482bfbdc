package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.alarm.AlarmFigures;
import dev.filmward.alarm.AlarmFigures.Answered;
import dev.filmward.alarm.AlarmFigures.Frequent;
import dev.filmward.alarm.AlarmFlood;
import dev.filmward.alarm.AlarmRate;
import dev.filmward.alarm.AlarmRun.Topic;
import dev.filmward.alarm.AlarmTargets;
import dev.filmward.alarm.Priority;
import dev.filmward.pipeline.SparedAlarms;
import java.time.ZoneId;
import java.util.Locale;

/** How figures of alarms look as JSON. */
final class FiguresJson {
  private static final int TOPICS = 10;
  private static final int FLOODS = 50;

  private final ZoneId zone;

  FiguresJson(ZoneId zone) {
    this.zone = zone;
  }

  ObjectNode of(AlarmFigures figures) {
    ObjectNode node =
        Wire.object().put("announced", figures.announced()).put("positions", figures.positions());
    node.set("perTenMinutes", rate(figures.rates().tenMinutes()));
    node.set("perHour", rate(figures.rates().hour()));
    node.set("perDay", rate(figures.rates().day()));
    node.set("perShift", rate(figures.rates().shift()));
    node.put("shareOfBusyHours", figures.shareOfBusyHours())
        .put("floodCount", figures.floods().size())
        .put("shareInFlood", figures.shareInFlood());
    ArrayNode floods = node.putArray("floods");
    figures.floods().stream().limit(FLOODS).map(this::flood).forEach(floods::add);
    node.putObject("stale")
        .put("now", figures.stale().now())
        .put("mostOnADay", figures.stale().mostOnADay());
    ArrayNode chattering = node.putArray("chattering");
    figures.chattering().forEach(topic -> chattering.add(topic(topic)));
    node.put("fleeting", figures.fleeting());
    ArrayNode frequent = node.putArray("frequent");
    for (Frequent each : figures.frequent().stream().limit(TOPICS).toList()) {
      frequent.add(topic(each.topic()).put("alarms", each.alarms()).put("share", each.share()));
    }
    node.put("topics", figures.frequent().size())
        .put("frequentShare", figures.shareOfFirst(TOPICS));
    ObjectNode priorities = node.putObject("priorities");
    for (Priority priority : Priority.values()) {
      priorities.put(priority.word(), figures.byPriority().getOrDefault(priority, 0));
    }
    node.set("answered", answered(figures.answered()));
    return node;
  }

  /** What the standards call acceptable. */
  static ObjectNode targets() {
    return Wire.object()
        .put("perTenMinutes", AlarmTargets.PER_TEN_MINUTES)
        .put("perTenMinutesAtMost", AlarmTargets.PER_TEN_MINUTES_AT_MOST)
        .put("perHour", AlarmTargets.PER_HOUR)
        .put("perHourAtMost", AlarmTargets.PER_HOUR_AT_MOST)
        .put("perDay", AlarmTargets.PER_DAY)
        .put("perDayAtMost", AlarmTargets.PER_DAY_AT_MOST)
        .put("inTenMinutes", AlarmTargets.IN_TEN_MINUTES)
        .put("shareOfBusyHours", AlarmTargets.SHARE_OF_HOURS_WITH_MANY)
        .put("shareInFlood", AlarmTargets.SHARE_IN_FLOOD)
        .put("staleOnADay", AlarmTargets.STALE_ON_A_DAY)
        .put("frequentShare", AlarmTargets.TOP_TEN_SHARE)
        .put("low", AlarmTargets.LOW_SHARE)
        .put("medium", AlarmTargets.MEDIUM_SHARE)
        .put("high", AlarmTargets.HIGH_SHARE);
  }

  ObjectNode spared(SparedAlarms spared) {
    ObjectNode node = topic(spared.topic()).put("alarms", spared.alarms());
    ArrayNode options = node.putArray("options");
    for (SparedAlarms.Option option : spared.options()) {
      ObjectNode one =
          options
              .addObject()
              .put("setting", option.setting().name().toLowerCase(Locale.ROOT).replace('_', '-'))
              .put("of", option.of())
              .put("left", option.left());
      Wire.number(one, "samplesNow", option.samplesNow());
      Wire.number(one, "samplesThen", option.samplesThen());
    }
    return node;
  }

  private ObjectNode rate(AlarmRate rate) {
    return Wire.object()
        .put("average", rate.average())
        .put("peak", rate.peak())
        .put("peakAt", rate.peakAt().map(at -> Wire.time(at, zone)).orElse(null));
  }

  private ObjectNode flood(AlarmFlood flood) {
    return Wire.object()
        .put("from", Wire.time(flood.from(), zone))
        .put("to", Wire.time(flood.to(), zone))
        .put("alarms", flood.alarms());
  }

  private static ObjectNode topic(Topic topic) {
    return Wire.object()
        .put("line", topic.line())
        .put("structure", topic.structure())
        .put("title", topic.words());
  }

  private static ObjectNode answered(Answered answered) {
    return Wire.object()
        .put("taken", answered.taken())
        .put("waiting", answered.waiting())
        .put("medianSeconds", answered.median().map(d -> d.toSeconds()).orElse(null))
        .put("nineOfTenSeconds", answered.nineOfTen().map(d -> d.toSeconds()).orElse(null));
  }
}
