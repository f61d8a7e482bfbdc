package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.chart.ChartKind;
import dev.filmward.pipeline.TestsChange;
import dev.filmward.rule.AlarmDelays.Delay;
import dev.filmward.rule.ChartTest;
import dev.filmward.rule.SignalTest;
import dev.filmward.rule.TestChoice;
import dev.filmward.rule.TestSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Reads the choices of tests that a request names. */
final class TestsRequests {
  private TestsRequests() {}

  /**
   * The {@code characteristics} of a body, each {@code {"position", "shown": [{"chart", "test"}],
   * "alarming": [...]}}, and its {@code delays}, each {@code {"chart", "test", "opensAfter",
   * "returnsAfter"}}; at least one of either.
   */
  static TestsChange change(JsonNode body) {
    Map<Integer, TestChoice> choices = choices(body);
    Map<ChartTest, Delay> delays = delays(body);
    if (choices.isEmpty() && delays.isEmpty()) {
      throw new IllegalArgumentException("\"characteristics\" is missing: whose tests?");
    }
    return new TestsChange(choices, delays);
  }

  private static Map<ChartTest, Delay> delays(JsonNode body) {
    Map<ChartTest, Delay> delays = new HashMap<>();
    for (JsonNode each : body.path("delays")) {
      SignalTest test = SignalTest.fromWord(Requests.field(each, "test"));
      delays.put(
          new ChartTest(chart(each), test),
          new Delay(samples(each, "opensAfter"), samples(each, "returnsAfter")));
    }
    return delays;
  }

  private static int samples(JsonNode delay, String name) {
    if (!delay.path(name).isInt()) {
      throw new IllegalArgumentException(
          "each of \"delays\" needs \"" + name + "\": a number of samples");
    }
    return delay.path(name).asInt();
  }

  private static Map<Integer, TestChoice> choices(JsonNode body) {
    Map<Integer, TestChoice> choices = new TreeMap<>();
    for (JsonNode each : body.path("characteristics")) {
      if (!each.path("position").isInt()) {
        throw new IllegalArgumentException(
            "each of \"characteristics\" needs a \"position\": 0 for the total, or a layer's");
      }
      choices.put(
          each.path("position").asInt(),
          new TestChoice(tests(each, "shown"), tests(each, "alarming")));
    }
    return choices;
  }

  private static TestSet tests(JsonNode characteristic, String name) {
    if (!characteristic.path(name).isArray()) {
      throw new IllegalArgumentException("\"" + name + "\" is missing: a list of tests");
    }
    TestSet tests = new TestSet(Set.of(), Set.of());
    for (JsonNode each : characteristic.path(name)) {
      tests = tests.with(chart(each), SignalTest.fromWord(Requests.field(each, "test")));
    }
    return tests;
  }

  private static ChartKind chart(JsonNode test) {
    ChartKind chart = ChartKind.fromWord(Requests.field(test, "chart"));
    if (chart != ChartKind.XBAR && chart != ChartKind.RANGE && chart != ChartKind.EWMA) {
      throw new IllegalArgumentException(
          "tests here are of xbar, range or ewma, not of " + chart.word());
    }
    return chart;
  }
}
