package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.util.RawValue;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Layer;
import dev.filmward.film.Structure;
import dev.filmward.pipeline.Board;
import dev.filmward.pipeline.Board.CharacteristicState;
import dev.filmward.pipeline.Board.HeldOut;
import dev.filmward.pipeline.Board.LineState;
import dev.filmward.pipeline.BoardReader;
import dev.filmward.pipeline.BoardReader.Seen;
import dev.filmward.pipeline.Plant;
import dev.filmward.subgroup.Subgroup;
import dev.filmward.web.Answers.Fresh;
import dev.filmward.web.WebServer.Options.Purpose;
import io.javalin.http.Context;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;

/** All lines at a glance, as JSON. */
final class BoardResource {
  private final Plant plant;
  private final BoardReader reader;

  /** So old a board may be that shows the same but for its time. */
  private static final Duration OLDEST = Duration.ofMillis(250);

  private final Purpose purpose;
  private final Answers answers;
  private final Map<String, Drawn> drawn = new ConcurrentHashMap<>();

  BoardResource(Plant plant, Purpose purpose, Answers answers) {
    this.answers = answers;
    this.plant = plant;
    this.reader = new BoardReader(plant);
    this.purpose = purpose;
  }

  /** What the last samples of a line look like, which is most of a board, as it is written. */
  private record Drawn(LineState of, Optional<RawValue> total, RawValue layers) {
    /** The reader gives the same list until something happens to the line. */
    boolean isOf(LineState line) {
      return of.structure().equals(line.structure())
          && of.characteristics() == line.characteristics()
          && of.heldOut().equals(line.heldOut());
    }
  }

  void get(Context ctx) {
    answers.give(ctx, this::fresh);
  }

  private Fresh fresh() {
    Seen seen = reader.look();
    Instant then = seen.board().now();
    return new Fresh(
        json(seen.board()),
        () ->
            Duration.between(then, plant.clock().instant()).abs().compareTo(OLDEST) < 0
                && seen.isCurrent().getAsBoolean());
  }

  private ObjectNode json(Board board) {
    ObjectNode answer =
        Wire.object()
            .put("now", Wire.time(board.now(), plant.zone()))
            .put("zone", plant.zone().getId())
            .put("demo", purpose == Purpose.DEMONSTRATION);
    ArrayNode lines = answer.putArray("lines");
    board.lines().forEach(line -> lines.add(line(line, board)));
    return answer;
  }

  private ObjectNode line(LineState line, Board board) {
    ObjectNode node =
        Wire.object()
            .put("line", line.line())
            .put("state", line.ask().name().toLowerCase(Locale.ROOT))
            .put("stale", line.stale())
            .put("ageSeconds", Duration.between(line.lastTakenAt(), board.now()).toSeconds())
            .put("openAlarms", line.alarms().open())
            .put("unacknowledged", line.alarms().unacknowledged())
            .put("held", line.alarms().held())
            .put("mode", line.mode().word());
    Wire.number(
        node,
        "expectedEverySeconds",
        line.interval()
            .map(usual -> OptionalDouble.of(usual.toMillis() / 1000.0))
            .orElse(OptionalDouble.empty()));
    node.putObject("structure")
        .put("code", line.structure().code())
        .put("name", line.structure().name());
    node.putObject("lastSample")
        .put("roll", line.lastSample().roll())
        .put("sample", line.lastSample().sample())
        .put("takenAt", Wire.time(line.lastTakenAt(), plant.zone()));
    node.putObject("limits")
        .put("state", line.limits().state().name().toLowerCase(Locale.ROOT))
        .put("version", line.limits().version())
        .put("subgroups", line.limits().samples());
    line.heldOut()
        .ifPresentOrElse(held -> node.set("heldOut", held(held)), () -> node.putNull("heldOut"));
    addStates(node, line);
    return node;
  }

  private static ObjectNode held(HeldOut held) {
    ObjectNode node = Wire.object();
    ArrayNode kinds = node.putArray("kinds");
    held.kinds().forEach(kind -> kinds.add(kind.word()));
    ArrayNode words = node.putArray("words");
    held.kinds().forEach(kind -> words.add(kind.words()));
    return node.put("evidence", held.evidence());
  }

  private void addStates(ObjectNode node, LineState line) {
    Drawn states = drawn.get(line.line());
    if (states == null || !states.isOf(line)) {
      states = draw(line);
      drawn.put(line.line(), states);
    }
    node.putRawValue("layers", states.layers);
    states.total.ifPresent(total -> node.putRawValue("total", total));
  }

  private static Drawn draw(LineState line) {
    ArrayNode layers = JsonNodeFactory.instance.arrayNode();
    Optional<RawValue> total = Optional.empty();
    for (CharacteristicState state : line.characteristics()) {
      ObjectNode json = state(state, line);
      if (state.characteristic().kind() == Characteristic.Kind.TOTAL) {
        total = Optional.of(Wire.written(json));
      } else {
        layers.add(json);
      }
    }
    return new Drawn(line, total, Wire.written(layers));
  }

  private static ObjectNode state(CharacteristicState state, LineState line) {
    Structure structure = line.structure();
    ObjectNode node = Wire.characteristic(state.characteristic());
    addMakeUp(node, state.characteristic(), structure);
    node.set("spec", Wire.spec(structure.spec(state.characteristic())));
    if (state.limits().isPresent()) {
      node.set("limits", Wire.band(state.limits().get()));
    } else {
      node.putNull("limits");
    }
    addFigures(node, state, structure);
    node.put("state", word(state, line)).put("outOfSpec", state.outOfSpec());
    node.set("signals", Wire.signals(state.signals()));
    ObjectNode recent = node.putObject("recent");
    ArrayNode takenAt = recent.putArray("takenAt");
    ArrayNode means = recent.putArray("mean");
    state
        .recent()
        .forEach(
            mean -> {
              takenAt.add(mean.takenAt().toEpochMilli());
              means.add(mean.mean().orElse(null));
            });
    return node;
  }

  private static void addMakeUp(
      ObjectNode node, Characteristic characteristic, Structure structure) {
    ArrayNode roles = node.putArray("roles");
    ArrayNode extruders = node.putArray("extruders");
    if (characteristic.kind() == Characteristic.Kind.LAYER) {
      List<Layer> members = structure.reported().get(characteristic.position() - 1).members();
      members.forEach(layer -> roles.add(layer.role().name().toLowerCase(Locale.ROOT)));
      members.forEach(layer -> layer.extruder().ifPresent(extruders::add));
    }
  }

  private static void addFigures(ObjectNode node, CharacteristicState state, Structure structure) {
    Optional<Subgroup> last = state.last();
    node.put("mean", last.map(Subgroup::mean).orElse(null));
    node.put("range", last.map(Subgroup::range).orElse(null));
    node.put("size", last.map(Subgroup::size).orElse(0));
    node.put("deviation", state.deviation(structure).orElse(null));
    if (state.thinnest().isPresent()) {
      node.putObject("thinnest")
          .put("lane", state.thinnest().get().lane())
          .put("um", state.thinnest().get().um());
    } else {
      node.putNull("thinnest");
    }
  }

  private static String word(CharacteristicState state, LineState line) {
    if (line.heldOut().isPresent()) {
      return "gauge";
    }
    if (state.last().isEmpty()) {
      return "missing";
    }
    return state.signals().isEmpty() ? "calm" : "unusual";
  }
}
