package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.pipeline.Handover;
import dev.filmward.pipeline.HandoverDesk;
import dev.filmward.pipeline.HandoverReader;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.ShiftDesk;
import dev.filmward.shift.Shift;
import dev.filmward.shift.ShiftBook;
import dev.filmward.store.SampleTable;
import dev.filmward.store.SignedHandover;
import dev.filmward.store.SignedHandover.Side;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.NoSuchElementException;
import java.util.Optional;

/** What a shift tells the next, and who signed it. */
final class HandoverResource {
  private static final String ADDRESS = "/api/v1/handover";

  private final Plant plant;
  private final ShiftDesk shifts;
  private final HandoverReader reader;
  private final HandoverDesk desk;
  private final HandoverJson json;
  private final ShiftJson shiftJson;
  private final ShownHandovers shown = new ShownHandovers();

  HandoverResource(Plant plant) {
    this.plant = plant;
    this.shifts = new ShiftDesk(plant);
    this.reader = new HandoverReader(plant);
    this.desk = new HandoverDesk(plant);
    this.json = new HandoverJson(plant.zone());
    this.shiftJson = new ShiftJson(plant.zone());
  }

  void get(Context ctx) {
    ShiftBook book = shifts.book();
    String line = Requests.textOr(ctx, "line", "");
    String word = Requests.textOr(ctx, "shift", "");
    Shift shift = word.isEmpty() ? desk.due(book, line) : shift(book, word);
    Handover handover = reader.read(line, shift);
    ObjectNode content = json.of(handover);
    ObjectNode answer =
        Wire.object()
            .put("now", Wire.time(plant.clock().instant(), plant.zone()))
            .put("zone", plant.zone().getId())
            .put("digest", shown.show(HandoverJson.text(content)));
    answer.set("handover", content);
    answer.set("previous", shiftJson.shift(book.before(shift)));
    answer.set("next", shiftJson.shift(book.after(shift)));
    answer.put("gives", HandoverDesk.meaning(Side.OUTGOING));
    answer.put("takes", HandoverDesk.meaning(Side.INCOMING));
    ArrayNode lines = answer.putArray("lines");
    plant.store().read(tables -> tables.samples().productions()).stream()
        .map(SampleTable.Production::line)
        .distinct()
        .forEach(lines::add);
    Optional<SignedHandover> signed = desk.signed(HandoverDesk.key(line, shift));
    answer.set("signed", signed.map(done -> json.signed(done, handover)).orElse(null));
    ctx.json(answer);
  }

  void sign(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    String line = body.path("line").asText("");
    Shift shift = shift(shifts.book(), Requests.field(body, "shift"));
    String digest = Requests.field(body, "digest");
    String by = Requests.by(ctx, body);
    SignedHandover signed =
        side(body) == Side.INCOMING
            ? desk.takeOver(HandoverDesk.key(line, shift), digest, by)
            : desk.handOver(line, shift, seen(digest, line, shift), by);
    ctx.json(json.signed(signed, reader.read(line, shift)));
  }

  private String seen(String digest, String line, Shift shift) throws IOException {
    String content =
        shown
            .find(digest)
            .orElseThrow(
                () ->
                    new IllegalStateException(
                        "what you saw is not known any more; look at the page again"));
    JsonNode tree = Wire.mapper().readTree(content);
    if (!tree.path("line").asText().equals(line)
        || !tree.path("shift").path("shift").asText().equals(shift.word())) {
      throw new IllegalArgumentException(
          "what you saw is of another shift or line than " + ADDRESS + " is asked to sign");
    }
    return content;
  }

  private static Side side(JsonNode body) {
    String word = Requests.field(body, "side");
    for (Side side : Side.values()) {
      if (side.word().equals(word)) {
        return side;
      }
    }
    throw new IllegalArgumentException("\"side\" is outgoing or incoming, not \"" + word + "\"");
  }

  private static Shift shift(ShiftBook book, String word) {
    return book.find(word)
        .orElseThrow(() -> new NoSuchElementException("there is no shift \"" + word + "\""));
  }
}
