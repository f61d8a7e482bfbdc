package dev.filmward.web;

import static dev.filmward.rule.SignalTest.BEYOND_LIMIT;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.chart.ChartKind;
import dev.filmward.film.Characteristic;
import dev.filmward.pipeline.LimitsProposal.PastAlarm;
import dev.filmward.pipeline.LinePrice;
import dev.filmward.pipeline.TestsPrice;
import dev.filmward.rule.AlarmDelays;
import dev.filmward.rule.ChartTest;
import dev.filmward.rule.SignalTest;
import dev.filmward.rule.TestChoice;
import dev.filmward.rule.TestSet;
import dev.filmward.rule.TestsVersion;
import dev.filmward.rule.price.ChosenPrice;
import dev.filmward.rule.price.Price;
import java.time.Duration;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** How choices of tests and their prices look as JSON; what never comes to an end is null. */
final class TestsJson {
  private TestsJson() {}

  static ObjectNode version(TestsVersion version, ZoneId zone) {
    ObjectNode node =
        Wire.object()
            .put("version", version.version())
            .put("holdsFrom", Wire.time(version.holdsFrom(), zone))
            .put("by", version.decision().author())
            .put("reason", version.decision().reason())
            .put("at", Wire.time(version.decision().at(), zone));
    ArrayNode choices = node.putArray("characteristics");
    version
        .choices()
        .forEach((position, choice) -> choices.add(choice(choice).put("position", position)));
    node.set("delays", delays(version.delays()));
    return node;
  }

  private static ArrayNode delays(AlarmDelays delays) {
    ArrayNode array = JsonNodeFactory.instance.arrayNode();
    for (SignalTest test : SignalTest.values()) {
      array.add(delay(delays, new ChartTest(ChartKind.XBAR, test)));
    }
    array.add(delay(delays, new ChartTest(ChartKind.RANGE, BEYOND_LIMIT)));
    return array.add(delay(delays, new ChartTest(ChartKind.EWMA, BEYOND_LIMIT)));
  }

  private static ObjectNode delay(AlarmDelays delays, ChartTest test) {
    return Wire.object()
        .put("chart", test.chart().word())
        .put("test", test.test().word())
        .put("opensAfter", delays.of(test).opensAfter())
        .put("returnsAfter", delays.of(test).returnsAfter());
  }

  static ObjectNode price(TestsPrice asked, ZoneId zone) {
    ObjectNode node = Wire.object().put("size", asked.size());
    Wire.number(node, "intervalSeconds", seconds(asked.interval()));
    node.put("shiftSeconds", LinePrice.SHIFT.toSeconds());
    ArrayNode characteristics = node.putArray("characteristics");
    int index = 0;
    for (Map.Entry<Characteristic, TestChoice> each : asked.choices().entrySet()) {
      ObjectNode one = choice(each.getValue());
      one.set("characteristic", Wire.characteristic(each.getKey()));
      one.set("price", price(asked.price().characteristics().get(index++), asked));
      characteristics.add(one);
    }
    node.put("exact", asked.price().exact() == ChosenPrice.Exactness.EXACT);
    node.set("price", price(asked.price().line(), asked));
    node.set("withShares", price(asked.withShares().line(), asked));
    ArrayNode changes = node.putArray("changes");
    asked.changes().forEach(change -> changes.add(change(change, asked)));
    node.putObject("family")
        .put("charts", asked.family().charts())
        .put("reachOfMeans", asked.family().ofMeans())
        .put("reachOfAverages", asked.family().ofAverages());
    node.set("delays", delays(asked.delays()));
    ArrayNode alarms = node.putArray("alarms");
    asked.alarms().forEach(alarm -> alarms.add(alarm(alarm, zone)));
    return node;
  }

  private static ObjectNode change(TestsPrice.Turned change, TestsPrice asked) {
    ObjectNode node =
        Wire.object()
            .put("chart", change.chart().word())
            .put("test", change.test().word())
            .put("turn", change.turn().name().toLowerCase(Locale.ROOT))
            .put("exact", change.price().exact() == ChosenPrice.Exactness.EXACT);
    node.set("price", price(change.price().line(), asked));
    return node;
  }

  private static ObjectNode price(Price price, TestsPrice asked) {
    ObjectNode node = Wire.object();
    OptionalDouble toSee = finite(price.samplesToSeeOneSigma());
    Wire.number(node, "samplesToFalseAlarm", finite(price.samplesToFalseAlarm()));
    Wire.number(
        node,
        "falseAlarmsPerShift",
        asked.interval().isPresent()
            ? OptionalDouble.of(price.falseAlarmsPerShift())
            : OptionalDouble.empty());
    Wire.number(node, "samplesToSeeOneSigma", toSee);
    OptionalDouble interval = seconds(asked.interval());
    Wire.number(
        node,
        "secondsToSeeOneSigma",
        toSee.isPresent() && interval.isPresent()
            ? OptionalDouble.of(toSee.getAsDouble() * interval.getAsDouble())
            : OptionalDouble.empty());
    return node;
  }

  private static ObjectNode choice(TestChoice choice) {
    ObjectNode node = Wire.object();
    node.set("shown", tests(choice.shown()));
    node.set("alarming", tests(choice.alarming()));
    return node;
  }

  private static ArrayNode tests(TestSet tests) {
    ArrayNode array = JsonNodeFactory.instance.arrayNode();
    tests.orderedOnMeans().forEach(test -> add(array, ChartKind.XBAR, test));
    tests.onSpread().forEach(test -> add(array, ChartKind.RANGE, BEYOND_LIMIT));
    tests.onAverage().forEach(test -> add(array, ChartKind.EWMA, BEYOND_LIMIT));
    return array;
  }

  private static void add(ArrayNode array, ChartKind chart, SignalTest test) {
    array.addObject().put("chart", chart.word()).put("test", test.word());
  }

  private static ObjectNode alarm(PastAlarm alarm, ZoneId zone) {
    return Wire.object()
        .put("title", alarm.title())
        .put("roll", alarm.first().roll())
        .put("sample", alarm.first().sample())
        .put("openedAt", Wire.time(alarm.openedAt(), zone));
  }

  private static OptionalDouble seconds(Optional<Duration> interval) {
    return interval
        .map(gap -> OptionalDouble.of(gap.toMillis() / 1000.0))
        .orElse(OptionalDouble.empty());
  }

  private static OptionalDouble finite(double value) {
    return Double.isInfinite(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
