package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.gauge.calibration.Calibration.Subject;
import dev.filmward.gauge.calibration.PieceReadings;
import dev.filmward.gauge.calibration.ReferencePiece;
import dev.filmward.gauge.calibration.TemperatureModel;
import dev.filmward.gauge.calibration.Velocity;
import dev.filmward.pipeline.GaugeDesk.Measured;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads what a request about gauges says. */
final class GaugeRequests {
  private static final int MOST_PIECES = 50;

  private GaugeRequests() {}

  static Measured measured(JsonNode body) {
    List<PieceReadings> pieces = new ArrayList<>();
    for (JsonNode each : Requests.array(body, "pieces")) {
      pieces.add(piece(each));
    }
    if (pieces.size() > MOST_PIECES) {
      throw new IllegalArgumentException("at most " + MOST_PIECES + " reference pieces at once");
    }
    Subject subject =
        new Subject(
            Requests.field(body, "gauge"),
            Requests.fieldOr(body, "structure", ""),
            Requests.fieldOr(body, "layer", ""),
            Requests.fieldOr(body, "resin", ""));
    return new Measured(subject, velocity(body.path("before")), pieces, temperature(body));
  }

  /** {@code {"velocityMps", "offsetNs"}}; no offset is 0. */
  static Velocity velocity(JsonNode node) {
    return new Velocity(number(node, "velocityMps"), numberOr(node, "offsetNs", 0));
  }

  /** A number that must be there. */
  static double number(JsonNode body, String name) {
    JsonNode value = body.path(name);
    if (!value.isNumber()) {
      throw new IllegalArgumentException("\"" + name + "\" is a number");
    }
    return value.asDouble();
  }

  static double numberOr(JsonNode body, String name, double other) {
    return body.hasNonNull(name) ? number(body, name) : other;
  }

  /** A time that must be there. */
  static Instant time(JsonNode body, String name) {
    String text = Requests.field(body, name);
    try {
      return OffsetDateTime.parse(text).toInstant();
    } catch (DateTimeException e) {
      throw new IllegalArgumentException(
          "\"" + name + "\" is a time like 2026-11-18T06:00:00+01:00, not \"" + text + "\"", e);
    }
  }

  /** {@code {"name", "thicknessUm", "expandedUm", "k", "material", "howKnown"}}. */
  static ReferencePiece known(JsonNode node) {
    return new ReferencePiece(
        Requests.field(node, "name"),
        number(node, "thicknessUm"),
        numberOr(node, "expandedUm", 0),
        numberOr(node, "k", 2),
        Requests.fieldOr(node, "material", ""),
        Requests.fieldOr(node, "howKnown", ""));
  }

  private static PieceReadings piece(JsonNode node) {
    ReferencePiece piece = known(node);
    List<Double> values = new ArrayList<>();
    for (JsonNode each : Requests.array(node, "readings")) {
      if (!each.isNumber()) {
        throw new IllegalArgumentException("a reading is a number, not " + each);
      }
      values.add(each.asDouble());
    }
    return new PieceReadings(
        piece, PieceReadings.Kind.fromWord(Requests.fieldOr(node, "kind", "thickness")), values);
  }

  private static Optional<TemperatureModel> temperature(JsonNode body) {
    return body.hasNonNull("temperatureC")
        ? Optional.of(
            new TemperatureModel(
                number(body, "temperatureC"), numberOr(body, "percentPerKelvin", 0)))
        : Optional.empty();
  }
}
