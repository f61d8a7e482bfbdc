package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.AlarmTitle;
import dev.filmward.alarm.Hold;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import dev.filmward.store.AlarmDetails;
import dev.filmward.store.AlarmTable;
import dev.filmward.store.AlarmTable.AlarmSignal;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** How an alarm looks as JSON. */
final class AlarmJson {
  /** Of each alarm, the newest. */
  static final int MOST_SIGNALS = 200;

  private final Structures structures;
  private final ZoneId zone;
  private final List<Hold> holds;
  private final AlarmDetails details;

  /**
   * @param holds those that go on
   * @param details of the alarms that are to be shown
   */
  AlarmJson(Structures structures, ZoneId zone, List<Hold> holds, AlarmDetails details) {
    this.holds = holds;
    this.details = details;
    this.structures = structures;
    this.zone = zone;
  }

  ObjectNode of(Alarm alarm) {
    ObjectNode node =
        Wire.object()
            .put("id", alarm.id())
            .put("line", alarm.subject().line())
            .put("structure", alarm.subject().structure());
    addWords(node, alarm);
    node.put("state", alarm.state().word())
        .put("closed", alarm.isClosed())
        .put("priority", alarm.excursion().priority().word())
        .put("outOfSpec", alarm.excursion().outOfSpec());
    addCourse(node, alarm);
    addSignals(node, alarm);
    addPeople(node, alarm);
    ArrayNode history = node.putArray("history");
    for (AlarmTable.HistoryEntry entry : details.history(alarm)) {
      history
          .addObject()
          .put("at", time(entry.at()))
          .put("by", entry.by())
          .put("what", entry.what());
    }
    return node;
  }

  private void addWords(ObjectNode node, Alarm alarm) {
    Optional<Structure> structure = structures.find(alarm.subject().structure());
    node.put("group", structure.map(known -> AlarmTitle.group(alarm.subject(), known)).orElse(""));
    node.put(
        "title",
        structure
            .map(known -> AlarmTitle.of(alarm.subject(), known))
            .orElse(alarm.subject().deviation().words()));
  }

  private void addCourse(ObjectNode node, Alarm alarm) {
    node.put("historical", alarm.historical())
        .put("openedAt", time(alarm.excursion().course().openedAt()))
        .put("lastSignalAt", time(alarm.excursion().course().lastSignalAt()))
        .put("returnedAt", alarm.excursion().course().returnedAt().map(this::time).orElse(null))
        .put("roll", alarm.excursion().course().first().roll())
        .put("sample", alarm.excursion().course().first().sample())
        .put("shownAt", alarm.shownAt().map(this::time).orElse(null))
        .put("outOfSpecAt", alarm.excursion().outOfSpecAt().map(this::time).orElse(null));
    addHold(node, alarm);
  }

  /** What holds it back, where a person did. */
  private void addHold(ObjectNode node, Alarm alarm) {
    node.putNull("hold");
    if (alarm.state().isHeld()) {
      holds.stream()
          .filter(hold -> hold.kind().state() == alarm.state())
          .filter(hold -> hold.scope().covers(alarm.subject()))
          .findFirst()
          .ifPresent(hold -> node.set("hold", HoldJson.of(hold, zone)));
    }
  }

  private void addSignals(ObjectNode node, Alarm alarm) {
    ArrayNode members = node.putArray("characteristics");
    alarm.subject().members().forEach(member -> members.add(Wire.characteristic(member)));
    node.put("signalCount", details.signalCount(alarm));
    ArrayNode signals = node.putArray("signals");
    for (AlarmSignal signal : details.signals(alarm)) {
      ObjectNode json = Wire.signal(signal.signal());
      addMember(json, alarm, signal.position());
      json.put("roll", signal.roll())
          .put("sample", signal.sample())
          .put("takenAt", time(signal.takenAt()));
      signals.add(json);
    }
  }

  private static void addMember(ObjectNode json, Alarm alarm, int position) {
    for (Characteristic member : alarm.subject().members()) {
      if (member.position() == position) {
        json.setAll(Wire.characteristic(member));
      }
    }
  }

  private void addPeople(ObjectNode node, Alarm alarm) {
    node.putNull("acknowledged").putNull("finding");
    alarm
        .acknowledgement()
        .ifPresent(
            seen -> node.putObject("acknowledged").put("by", seen.by()).put("at", time(seen.at())));
    alarm
        .finding()
        .ifPresent(
            found ->
                node.putObject("finding")
                    .put("cause", found.cause())
                    .put("action", found.action())
                    .put("by", found.by())
                    .put("at", time(found.at())));
  }

  private String time(Instant instant) {
    return Wire.time(instant, zone);
  }
}
