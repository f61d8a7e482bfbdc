package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.film.Structure;
import dev.filmward.gauge.calibration.ReferencePiece;
import dev.filmward.gauge.study.KnownPieces;
import dev.filmward.gauge.study.StudyKind;
import dev.filmward.gauge.study.StudyPlan;
import dev.filmward.gauge.study.StudyPlan.Frame;
import dev.filmward.gauge.study.StudyPlan.PlannedLayer;
import dev.filmward.gauge.study.StudyStep;
import dev.filmward.pipeline.StudyDesk;
import dev.filmward.pipeline.StudyDesk.Given;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;

/** What bodies of requests about gauge studies say. */
final class StudyRequests {
  private StudyRequests() {}

  static StudyPlan plan(JsonNode body, Structure structure, long seed) {
    StudyKind kind = StudyKind.fromWord(Requests.fieldOr(body, "kind", StudyKind.CROSSED.word()));
    return kind == StudyKind.CROSSED
        ? crossed(body, structure, seed)
        : known(kind, body, structure, seed);
  }

  private static StudyPlan crossed(JsonNode body, Structure structure, long seed) {
    return new StudyPlan(
        Requests.field(body, "gauge"),
        structure.code(),
        Requests.field(body, "purpose"),
        StudyDesk.layersOf(structure),
        structure.total(),
        names(body, "parts"),
        names(body, "operators"),
        Requests.wholeNumber(body, "trials"),
        seed);
  }

  private static StudyPlan known(StudyKind kind, JsonNode body, Structure structure, long seed) {
    Frame frame =
        new Frame(
            Requests.field(body, "gauge"),
            structure.code(),
            Requests.field(body, "purpose"),
            names(body, "operators"),
            seed);
    List<ReferencePiece> pieces = new ArrayList<>();
    Requests.array(body, "pieces").forEach(piece -> pieces.add(GaugeRequests.known(piece)));
    boolean isDated = kind == StudyKind.STABILITY;
    KnownPieces known = new KnownPieces(kind, pieces, isDated ? dates(body) : List.of());
    int times = Requests.wholeNumber(body, isDated ? "perDate" : "trials");
    return StudyPlan.of(frame, layer(body, structure), known, times);
  }

  /** As which layer the pieces are read: one by its name, or all of them. */
  private static PlannedLayer layer(JsonNode body, Structure structure) {
    String name = Requests.fieldOr(body, "layer", StudyPlan.TOTAL);
    return StudyDesk.layersOf(structure).stream()
        .filter(layer -> layer.name().equals(name))
        .findFirst()
        .or(
            () ->
                name.equals(StudyPlan.TOTAL)
                    ? Optional.of(new PlannedLayer(name, structure.total()))
                    : Optional.empty())
        .orElseThrow(
            () ->
                new NoSuchElementException(
                    structure.code() + " has no layer \"" + name + "\"; name one, or \"total\""));
  }

  private static List<LocalDate> dates(JsonNode body) {
    List<LocalDate> dates = new ArrayList<>();
    for (JsonNode date : Requests.array(body, "dates")) {
      try {
        dates.add(LocalDate.parse(date.asText("")));
      } catch (DateTimeException e) {
        throw new IllegalArgumentException(
            "\"dates\" are days like 2026-11-25, not \"" + date.asText("") + "\"", e);
      }
    }
    return dates;
  }

  static Given given(JsonNode node) {
    if (!node.path("um").isNumber()) {
      throw new IllegalArgumentException("\"um\" is a number: the thickness in micrometres");
    }
    StudyStep step =
        new StudyStep(
            Requests.field(node, "part"),
            Requests.field(node, "operator"),
            Requests.wholeNumber(node, "trial"));
    return new Given(step, Requests.field(node, "layer"), node.path("um").asDouble());
  }

  private static List<String> names(JsonNode body, String field) {
    List<String> names = new ArrayList<>();
    Requests.array(body, field).forEach(name -> names.add(name.asText("").strip()));
    return names;
  }
}
