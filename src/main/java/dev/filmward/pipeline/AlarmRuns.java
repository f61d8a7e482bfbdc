package dev.filmward.pipeline;

import dev.filmward.alarm.Alarm;
import dev.filmward.alarm.AlarmRun;
import dev.filmward.alarm.AlarmRun.Stretch;
import dev.filmward.alarm.AlarmRun.Topic;
import dev.filmward.alarm.AlarmSpan;
import dev.filmward.alarm.AlarmTitle;
import dev.filmward.alarm.Subject;
import dev.filmward.film.Characteristic;
import dev.filmward.film.Structures;
import dev.filmward.store.AlarmMomentTable.AlarmMoment;
import dev.filmward.store.AlarmMomentTable.SignalMoment;
import dev.filmward.store.FigureColumns;
import dev.filmward.store.FigureTable.Series;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.Tables;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Reads alarms as people met them: when each signalled without a break, counted along the samples
 * of its production. For one transaction.
 */
final class AlarmRuns {
  private final Tables tables;
  private final Structures structures;
  private final Map<Topic, Set<Characteristic>> members = new HashMap<>();

  AlarmRuns(Tables tables, Structures structures) {
    this.tables = tables;
    this.structures = structures;
  }

  /** Which characteristics the alarms of a topic were about, of those that were read. */
  Set<Characteristic> members(Topic topic) {
    return members.getOrDefault(topic, Set.of());
  }

  /**
   * Those that were announced or signalled in a time, and were no old news when they came.
   *
   * @param line empty for all lines
   */
  List<AlarmRun> read(AlarmSpan period, String line) {
    Map<Long, Set<Long>> samples =
        tables.alarmMoments().signals(period.from(), period.to()).stream()
            .collect(
                Collectors.groupingBy(
                    SignalMoment::alarmId,
                    Collectors.mapping(SignalMoment::sampleId, Collectors.toSet())));
    Map<List<String>, List<AlarmMoment>> byProduction =
        tables.alarmMoments().touching(period.from(), period.to()).stream()
            .filter(alarm -> line.isEmpty() || alarm.line().equals(line))
            .collect(Collectors.groupingBy(alarm -> List.of(alarm.line(), alarm.structure())));
    List<AlarmRun> runs = new ArrayList<>();
    byProduction.values().forEach(alarms -> runs.addAll(ofProduction(alarms, samples)));
    return runs;
  }

  private List<AlarmRun> ofProduction(List<AlarmMoment> alarms, Map<Long, Set<Long>> samples) {
    AlarmMoment any = alarms.get(0);
    Instant first =
        alarms.stream().map(AlarmMoment::openedAt).min(Instant::compareTo).orElseThrow();
    FigureColumns total =
        tables.figures().columns(new Series(any.line(), any.structure(), 0), Span.since(first));
    Map<Long, Integer> places = new HashMap<>();
    for (int place = 0; place < total.count(); place++) {
      places.put(total.sampleId(place), place);
    }
    return alarms.stream()
        .flatMap(
            alarm -> run(alarm, samples.getOrDefault(alarm.id(), Set.of()), total, places).stream())
        .toList();
  }

  private Optional<AlarmRun> run(
      AlarmMoment moment, Set<Long> samples, FigureColumns total, Map<Long, Integer> places) {
    int[] signalled =
        samples.stream().filter(places::containsKey).mapToInt(places::get).sorted().toArray();
    List<Stretch> stretches = stretches(moment, signalled, total);
    return tables
        .alarms()
        .find(moment.id())
        .map(Alarm::subject)
        .map(this::topic)
        .map(
            topic ->
                new AlarmRun(
                    moment.id(), topic, moment.priority(), stretches, moment.acknowledgedAt()));
  }

  private static List<Stretch> stretches(AlarmMoment alarm, int[] signalled, FigureColumns total) {
    List<Stretch> stretches = new ArrayList<>();
    int start = 0;
    for (int i = 1; i <= signalled.length; i++) {
      if (i == signalled.length || signalled[i] > signalled[i - 1] + 1) {
        int last = signalled[i - 1];
        Optional<Instant> to =
            i == signalled.length ? alarm.returnedAt() : Optional.of(takenAt(total, last + 1));
        stretches.add(new Stretch(takenAt(total, signalled[start]), to, signalled[start], last));
        start = i;
      }
    }
    return stretches.isEmpty()
        ? List.of(new Stretch(alarm.openedAt(), alarm.returnedAt(), 0, 0))
        : stretches;
  }

  private static Instant takenAt(FigureColumns total, int place) {
    return total.takenAt(place);
  }

  private Topic topic(Subject subject) {
    String words =
        structures
            .find(subject.structure())
            .map(structure -> AlarmTitle.of(subject, structure))
            .orElse(subject.deviation().words());
    Topic topic = new Topic(subject.line(), subject.structure(), subject.deviation(), words);
    members.computeIfAbsent(topic, any -> new TreeSet<>()).addAll(subject.members());
    return topic;
  }
}
