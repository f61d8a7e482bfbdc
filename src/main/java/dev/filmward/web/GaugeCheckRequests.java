package dev.filmward.web;

import dev.filmward.gauge.Gauge;
import dev.filmward.gauge.conformity.DecisionRule;
import dev.filmward.gauge.echo.Resin;
import dev.filmward.gauge.echo.Resins;
import dev.filmward.gauge.echo.Setup;
import dev.filmward.gauge.uncertainty.Coverage;
import dev.filmward.gauge.uncertainty.LayerModel;
import dev.filmward.gauge.uncertainty.Uncertain;
import dev.filmward.pipeline.FilmCheck;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads what a request says of a gauge before a film. Stateless. */
final class GaugeCheckRequests {
  private static final String COUPLANT = "water";
  private static final String BACKING = "air";
  private static final double BANDWIDTH = 0.6;
  private static final double TEMPERATURE_K = 2;
  private static final double TIMING_NS = 0.1;
  private static final double STUDENT = 0.95;

  private GaugeCheckRequests() {}

  static Setup setup(Context ctx) {
    Gauge gauge =
        new Gauge(
            "of this check",
            decimal(ctx, "frequency")
                .orElseThrow(
                    () -> new IllegalArgumentException("the address needs frequency=... in MHz")),
            decimal(ctx, "bandwidth").orElse(BANDWIDTH));
    return new Setup(
        gauge,
        coupling(Requests.textOr(ctx, "coupling", "immersion")),
        medium(Requests.textOr(ctx, "couplant", COUPLANT), Resin.Use.LIQUID),
        medium(Requests.textOr(ctx, "backing", BACKING), Resin.Use.LIQUID, Resin.Use.BACKING));
  }

  static FilmCheck.Asked asked(Context ctx) {
    LayerModel.Conditions conditions =
        new LayerModel.Conditions(
            decimal(ctx, "temperature").orElse(TEMPERATURE_K),
            Uncertain.of(decimal(ctx, "timing").orElse(TIMING_NS)),
            Uncertain.of(decimal(ctx, "zero").orElse(TIMING_NS)),
            shots(ctx));
    return new FilmCheck.Asked(
        conditions,
        coverage(Requests.textOr(ctx, "coverage", "two")),
        percents(Requests.textOr(ctx, "velocity", "")),
        rule(Requests.textOr(ctx, "rule", "guard-95")),
        given(ctx, "line"));
  }

  static Optional<String> given(Context ctx, String name) {
    return Optional.of(Requests.textOr(ctx, name, "")).filter(text -> !text.isEmpty());
  }

  private static int shots(Context ctx) {
    long shots = Requests.number(ctx, "shots").orElse(1L);
    return (int) Math.max(Integer.MIN_VALUE, Math.min(Integer.MAX_VALUE, shots));
  }

  private static Setup.Coupling coupling(String word) {
    return switch (word) {
      case "contact" -> Setup.Coupling.CONTACT;
      case "immersion" -> Setup.Coupling.IMMERSION;
      default -> throw unknown("coupling", word, "contact or immersion");
    };
  }

  private static Coverage coverage(String word) {
    return switch (word) {
      case "two" -> Coverage.TWO;
      case "student" -> Coverage.student(STUDENT);
      default -> throw unknown("coverage", word, "two or student");
    };
  }

  private static DecisionRule rule(String word) {
    return switch (word) {
      case "simple" -> DecisionRule.SIMPLE;
      case "guard-95" -> DecisionRule.GUARD_95;
      case "guard-expanded" -> DecisionRule.GUARD_EXPANDED;
      default -> throw unknown("rule", word, "simple, guard-95 or guard-expanded");
    };
  }

  private static Resin medium(String key, Resin.Use... uses) {
    try {
      return Resins.builtIn().in(key, uses);
    } catch (NoSuchElementException e) {
      throw new IllegalArgumentException(e.getMessage(), e);
    }
  }

  private static IllegalArgumentException unknown(String name, String word, String known) {
    return new IllegalArgumentException(name + " is " + known + ", not \"" + word + "\"");
  }

  /** Percents with commas between; nothing between two of them where there is none. */
  private static List<OptionalDouble> percents(String text) {
    List<OptionalDouble> percents = new ArrayList<>();
    if (text.isEmpty()) {
      return percents;
    }
    for (String part : text.split(",", -1)) {
      percents.add(
          part.isBlank() ? OptionalDouble.empty() : OptionalDouble.of(number("velocity", part)));
    }
    return percents;
  }

  private static Optional<Double> decimal(Context ctx, String name) {
    return given(ctx, name).map(text -> number(name, text));
  }

  private static double number(String name, String text) {
    try {
      return Double.parseDouble(text.strip());
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException(
          name + " is a number with a decimal point, not \"" + text + "\"", e);
    }
  }
}
