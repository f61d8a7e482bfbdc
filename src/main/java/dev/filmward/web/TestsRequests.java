package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.chart.ChartKind;
import dev.filmward.rule.SignalTest;
import dev.filmward.rule.TestChoice;
import dev.filmward.rule.TestSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Reads the choices of tests that a request names. */
final class TestsRequests {
  private TestsRequests() {}

  /**
   * The {@code characteristics} of a body, each {@code {"position", "shown": [{"chart", "test"}],
   * "alarming": [...]}}, by position; at least one.
   */
  static Map<Integer, TestChoice> choices(JsonNode body) {
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
    if (choices.isEmpty()) {
      throw new IllegalArgumentException("\"characteristics\" is missing: whose tests?");
    }
    return choices;
  }

  private static TestSet tests(JsonNode characteristic, String name) {
    if (!characteristic.path(name).isArray()) {
      throw new IllegalArgumentException("\"" + name + "\" is missing: a list of tests");
    }
    TestSet tests = new TestSet(Set.of(), Set.of());
    for (JsonNode each : characteristic.path(name)) {
      ChartKind chart = ChartKind.fromWord(Requests.field(each, "chart"));
      if (chart != ChartKind.XBAR && chart != ChartKind.RANGE && chart != ChartKind.EWMA) {
        throw new IllegalArgumentException(
            "tests here are of xbar, range or ewma, not of " + chart.word());
      }
      tests = tests.with(chart, SignalTest.fromWord(Requests.field(each, "test")));
    }
    return tests;
  }
}
