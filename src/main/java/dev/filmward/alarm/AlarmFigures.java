package dev.filmward.alarm;

import dev.filmward.alarm.AlarmRun.Topic;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * How good the alarms of a time were, by the measures of IEC 62682, ANSI/ISA-18.2 and EEMUA 191
 * (from memory). Takes alarms as they were announced, gives rates for an operator position, floods,
 * stale and chattering ones, and which topics made most of them. Immutable; what stands in {@code
 * runs} but was announced before the period counts for staleness only.
 *
 * @param announced in the period
 * @param shareOfBusyHours hours of a position with more than {@value AlarmTargets#MANY_IN_AN_HOUR}
 * @param shareInFlood of the time, over all positions
 * @param frequent topics, the one with the most alarms first; all of them
 */
public record AlarmFigures(
    int announced,
    int positions,
    Rates rates,
    double shareOfBusyHours,
    List<AlarmFlood> floods,
    double shareInFlood,
    Stale stale,
    List<Topic> chattering,
    int fleeting,
    List<Frequent> frequent,
    Map<Priority, Integer> byPriority,
    Answered answered) {
  static final Duration STALE = Duration.ofHours(24);
  private static final Duration HOUR = Duration.ofHours(1);

  /** Alarms for each position. */
  public record Rates(AlarmRate tenMinutes, AlarmRate hour, AlarmRate day, AlarmRate shift) {}

  /**
   * Alarms that signalled for more than 24 hours without a break.
   *
   * @param now at the end of the period
   * @param mostOnADay on the day that had the most of them
   */
  public record Stale(int now, int mostOnADay) {}

  /** A topic, how many alarms it made, and which part of all that was. */
  public record Frequent(Topic topic, int alarms, double share) {}

  /**
   * How long it took until somebody took an alarm.
   *
   * @param waiting alarms that nobody has taken
   * @param median of the others
   * @param nineOfTen nine of ten were taken within that time
   */
  public record Answered(
      int taken, int waiting, Optional<Duration> median, Optional<Duration> nineOfTen) {}

  /**
   * What is asked.
   *
   * @param days calendar days that touch the period
   * @param shifts that touch the period
   * @param lines of each operator position; at least one position
   */
  public record Question(
      AlarmSpan period, List<AlarmSpan> days, List<AlarmSpan> shifts, List<List<String>> lines) {
    public Question {
      days = List.copyOf(days);
      shifts = List.copyOf(shifts);
      lines = List.copyOf(lines);
      if (lines.isEmpty()) {
        throw new IllegalArgumentException("alarms come to somebody: at least one position");
      }
    }
  }

  public AlarmFigures {
    floods = List.copyOf(floods);
    chattering = List.copyOf(chattering);
    frequent = List.copyOf(frequent);
    byPriority = Map.copyOf(byPriority);
  }

  public static AlarmFigures of(List<AlarmRun> runs, Question question) {
    AlarmSpan period = question.period();
    List<AlarmRun> announced =
        runs.stream().filter(run -> period.contains(run.raisedAt())).toList();
    List<List<Instant>> moments =
        question.lines().stream().map(lines -> moments(announced, lines)).toList();
    List<AlarmSpan> hours = period.pieces(HOUR);
    List<AlarmFlood> floods = new ArrayList<>();
    moments.forEach(position -> floods.addAll(AlarmFlood.of(position, period.to())));
    Rates rates =
        new Rates(
            AlarmRate.of(moments, period.pieces(AlarmFlood.WINDOW), period),
            AlarmRate.of(moments, hours, period),
            AlarmRate.of(moments, question.days(), period),
            AlarmRate.of(moments, question.shifts(), period));
    return new AlarmFigures(
        announced.size(),
        moments.size(),
        rates,
        shareOfBusy(moments, hours),
        floods,
        shareIn(floods, period, moments.size()),
        stale(runs, question),
        chattering(announced),
        (int) announced.stream().filter(AlarmRun::isFleeting).count(),
        frequent(announced),
        byPriority(announced),
        answered(announced));
  }

  /** The share of all alarms that the first topics made. */
  public double shareOfFirst(int topics) {
    return frequent.stream().limit(topics).mapToDouble(Frequent::share).sum();
  }

  private static List<Instant> moments(List<AlarmRun> announced, List<String> lines) {
    return announced.stream()
        .filter(run -> lines.contains(run.topic().line()))
        .map(AlarmRun::raisedAt)
        .sorted()
        .toList();
  }

  private static double shareOfBusy(List<List<Instant>> positions, List<AlarmSpan> hours) {
    long busy = 0;
    for (List<Instant> position : positions) {
      busy +=
          hours.stream()
              .filter(hour -> hour.count(position) > AlarmTargets.MANY_IN_AN_HOUR)
              .count();
    }
    return busy / (double) (hours.size() * positions.size());
  }

  private static double shareIn(List<AlarmFlood> floods, AlarmSpan period, int positions) {
    double seconds = floods.stream().mapToDouble(f -> AlarmSpan.seconds(f.length())).sum();
    return seconds / (AlarmSpan.seconds(period.length()) * positions);
  }

  private static Stale stale(List<AlarmRun> runs, Question question) {
    Instant end = question.period().to();
    int most = 0;
    for (AlarmSpan day : question.days()) {
      most = Math.max(most, (int) runs.stream().filter(run -> isStaleOn(run, day, end)).count());
    }
    int now = (int) runs.stream().filter(run -> isStaleAt(run, end)).count();
    return new Stale(now, most);
  }

  private static boolean isStaleAt(AlarmRun run, Instant moment) {
    return run.stretches().stream()
        .filter(stretch -> stretch.to().filter(to -> !to.isAfter(moment)).isEmpty())
        .anyMatch(stretch -> stretch.length(moment).compareTo(STALE) > 0);
  }

  private static boolean isStaleOn(AlarmRun run, AlarmSpan day, Instant end) {
    Instant until = day.to().isBefore(end) ? day.to() : end;
    return run.stretches().stream()
        .filter(stretch -> stretch.to().filter(to -> !to.isAfter(day.from())).isEmpty())
        .anyMatch(stretch -> stretch.length(until).compareTo(STALE) > 0);
  }

  private static List<Topic> chattering(List<AlarmRun> announced) {
    return byTopic(announced).entrySet().stream()
        .filter(topic -> Chattering.is(topic.getValue()))
        .map(Map.Entry::getKey)
        .sorted(TOPICS)
        .toList();
  }

  private static List<Frequent> frequent(List<AlarmRun> announced) {
    return byTopic(announced).entrySet().stream()
        .map(
            topic ->
                new Frequent(
                    topic.getKey(),
                    topic.getValue().size(),
                    topic.getValue().size() / (double) announced.size()))
        .sorted(MOST_FIRST)
        .toList();
  }

  private static final Comparator<Topic> TOPICS =
      Comparator.comparing(Topic::line).thenComparing(Topic::structure).thenComparing(Topic::words);

  private static final Comparator<Frequent> MOST_FIRST =
      Comparator.comparingInt(Frequent::alarms).reversed().thenComparing(Frequent::topic, TOPICS);

  private static Map<Topic, List<AlarmRun>> byTopic(List<AlarmRun> announced) {
    return announced.stream().collect(Collectors.groupingBy(AlarmRun::topic));
  }

  private static Map<Priority, Integer> byPriority(List<AlarmRun> announced) {
    Map<Priority, Integer> counts = new EnumMap<>(Priority.class);
    for (Priority priority : Priority.values()) {
      counts.put(priority, 0);
    }
    announced.forEach(run -> counts.merge(run.priority(), 1, Integer::sum));
    return counts;
  }

  private static Answered answered(List<AlarmRun> announced) {
    List<Duration> took =
        announced.stream()
            .flatMap(
                run ->
                    run.acknowledgedAt().map(at -> Duration.between(run.raisedAt(), at)).stream())
            .map(duration -> duration.isNegative() ? Duration.ZERO : duration)
            .sorted()
            .toList();
    return new Answered(
        took.size(), announced.size() - took.size(), rank(took, 0.5), rank(took, 0.9));
  }

  /** The smallest time within which that share was taken. */
  private static Optional<Duration> rank(List<Duration> took, double share) {
    return took.isEmpty()
        ? Optional.empty()
        : Optional.of(took.get((int) Math.ceil(share * took.size()) - 1));
  }
}
