package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.AlreadyTakenException;
import dev.filmward.film.Structures;
import dev.filmward.pipeline.Plant;
import dev.filmward.store.AlarmDetails;
import dev.filmward.store.Tables;
import dev.filmward.store.Watched;
import dev.filmward.telling.Escalation.Raised;
import dev.filmward.web.Answers.Fresh;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Alarms, and what people do about them. */
final class AlarmResource {
  private static final int MOST = 500;
  private static final int LONGEST_SEARCH = 100;
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("yyyy-MM-dd 'at' HH:mm", Locale.ROOT);

  /** An alarm shows of a sample only what never changes: its name, its roll, its time. */
  private static final Set<String> SETTLED = Set.of("sample");

  private final Plant plant;
  private final Answers answers;

  AlarmResource(Plant plant, Answers answers) {
    this.plant = plant;
    this.answers = answers;
  }

  void list(Context ctx) {
    String state = ctx.queryParam("state");
    boolean all = "all".equals(state);
    if (!all && state != null && !"open".equals(state)) {
      throw new IllegalArgumentException("state is open or all, not \"" + state + "\"");
    }
    answers.give(ctx, () -> list(all));
  }

  private Fresh list(boolean all) {
    Structures structures = plant.structures();
    Watched<ObjectNode> answer =
        plant
            .store()
            .watch(
                SETTLED,
                tables ->
                    list(tables, all ? tables.alarms().newest(MOST) : tables.alarms().open()));
    return new Fresh(
        answer.value(), () -> answer.isCurrent() && plant.structures().equals(structures));
  }

  /** Alarms, open and closed, in whose comments, causes or actions a text stands. */
  void search(Context ctx) {
    String text = Requests.text(ctx, "words").strip();
    if (text.isEmpty() || text.length() > LONGEST_SEARCH) {
      throw new IllegalArgumentException("words is 1 to " + LONGEST_SEARCH + " characters");
    }
    ctx.json(
        plant
            .store()
            .read(
                tables ->
                    list(
                        tables,
                        tables.care().search(text, MOST).stream()
                            .map(tables.alarms()::find)
                            .flatMap(Optional::stream)
                            .toList())));
  }

  private ObjectNode list(Tables tables, List<Alarm> alarms) {
    ObjectNode answer = Wire.object();
    ArrayNode array = answer.putArray("alarms");
    json(tables, alarms).forEach(array::add);
    return answer;
  }

  void get(Context ctx) {
    long id = Requests.id(ctx);
    ctx.json(read(id));
  }

  void acknowledge(Context ctx) throws IOException {
    long id = Requests.id(ctx);
    try {
      plant.acknowledge(id, Requests.by(ctx, Requests.body(ctx)));
    } catch (AlreadyTakenException e) {
      String when = MINUTE.format(e.first().at().atZone(plant.zone()));
      throw new IllegalStateException(e.getMessage() + ", on " + when, e);
    }
    ctx.json(read(id));
  }

  ObjectNode read(long id) {
    return plant
        .store()
        .read(
            tables ->
                tables
                    .alarms()
                    .find(id)
                    .map(alarm -> json(tables, List.of(alarm)).get(0))
                    .orElseThrow(() -> new NoSuchElementException("no alarm " + id)));
  }

  private List<ObjectNode> json(Tables tables, List<Alarm> alarms) {
    AlarmDetails details = tables.alarms().details(alarms, AlarmJson.MOST_SIGNALS);
    CareJson care = new CareJson(tables, plant.structures(), plant.zone(), details);
    AlarmJson json =
        new AlarmJson(plant.structures(), plant.zone(), tables.holds().goingOn(), details);
    List<ObjectNode> nodes = new ArrayList<>();
    for (Alarm alarm : alarms) {
      ObjectNode node = json.of(alarm);
      care.add(node, alarm);
      nodes.add(node.put("escalatedAt", escalatedAt(details, alarm)));
    }
    return nodes;
  }

  private @Nullable String escalatedAt(AlarmDetails details, Alarm alarm) {
    return details
        .raised(alarm)
        .flatMap(Raised::escalatedAt)
        .map(at -> Wire.time(at, plant.zone()))
        .orElse(null);
  }
}
