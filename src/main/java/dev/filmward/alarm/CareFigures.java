package dev.filmward.alarm;

import dev.filmward.diagnosis.Causes;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * How alarms were cared for: how soon somebody took them and found the cause, how many were closed
 * without one, how many came again, and which causes there were. Immutable.
 *
 * @param alarms all that opened in the span
 * @param toAcknowledge from the sample that opened an alarm until somebody took it; of those that
 *     were not historical
 * @param toCause the same until a cause was first named
 * @param closed with cause and action
 * @param closedWithoutCause closed as "no cause found"; below 20 to 30 percent is thought healthy
 *     (common practice, no source)
 * @param repeats about the same layers in the same way as another alarm whose last signal came at
 *     most {@link #AGAIN} before
 * @param unexplained no cause named yet, or it was taken back
 * @param pareto causes, the most frequent first
 */
public record CareFigures(
    int alarms,
    TimeTaken toAcknowledge,
    TimeTaken toCause,
    int closed,
    int closedWithoutCause,
    int repeats,
    int unexplained,
    List<CauseCount> pareto) {

  /** An alarm that comes back so soon was not put right (common practice, no source). */
  public static final Duration AGAIN = Duration.ofDays(7);

  private static final double NINETY = 0.9;

  public CareFigures {
    pareto = List.copyOf(pareto);
  }

  /**
   * How long something took.
   *
   * @param count how often it happened; the rest is empty where it never did
   * @param median the middle one, or half-way between the two in the middle
   * @param ninetieth nine of ten took no longer (nearest rank)
   */
  public record TimeTaken(
      int count,
      Optional<Duration> median,
      Optional<Duration> ninetieth,
      Optional<Duration> longest) {

    static TimeTaken of(Collection<Duration> all) {
      List<Duration> sorted = all.stream().sorted().toList();
      int n = sorted.size();
      if (n == 0) {
        return new TimeTaken(0, Optional.empty(), Optional.empty(), Optional.empty());
      }
      Duration median = sorted.get((n - 1) / 2).plus(sorted.get(n / 2)).dividedBy(2);
      int rank = (int) Math.ceil(NINETY * n);
      return new TimeTaken(
          n,
          Optional.of(median),
          Optional.of(sorted.get(rank - 1)),
          Optional.of(sorted.get(n - 1)));
    }
  }

  /**
   * A cause and how many alarms had it.
   *
   * @param cumulative share of the explained alarms that this cause and the more frequent ones had
   */
  public record CauseCount(String code, int alarms, double cumulative) {}

  /**
   * Works them out.
   *
   * @param records in any order; those that opened before the span only tell what came again, so
   *     they reach {@link #AGAIN} further back
   * @param since begin of the span
   */
  public static CareFigures of(Collection<CareRecord> records, Instant since) {
    List<CareRecord> own =
        records.stream().filter(record -> !record.openedAt().isBefore(since)).toList();
    List<CareRecord> closed = own.stream().filter(CareRecord::closed).toList();
    return new CareFigures(
        own.size(),
        taken(own, CareRecord::acknowledgedAt),
        taken(own, CareRecord::causeAt),
        closed.size(),
        (int) closed.stream().filter(CareFigures::isWithoutCause).count(),
        repeats(own, records),
        (int) own.stream().filter(record -> record.causeCode().isEmpty()).count(),
        pareto(own));
  }

  /** Of the closed alarms; empty where none is closed. */
  public OptionalDouble shareWithoutCause() {
    return share(closedWithoutCause, closed);
  }

  /** Of all alarms; empty where there is none. */
  public OptionalDouble shareRepeated() {
    return share(repeats, alarms);
  }

  private static OptionalDouble share(int part, int whole) {
    return whole == 0 ? OptionalDouble.empty() : OptionalDouble.of((double) part / whole);
  }

  private static boolean isWithoutCause(CareRecord record) {
    return record.causeCode().filter(Causes.NO_CAUSE_FOUND::equals).isPresent();
  }

  /** An alarm that a late sample moved behind what people did took no time. */
  private static TimeTaken taken(
      List<CareRecord> own, Function<CareRecord, Optional<Instant>> moment) {
    List<Duration> all = new ArrayList<>();
    for (CareRecord record : own) {
      if (!record.historical()) {
        moment
            .apply(record)
            .map(at -> Duration.between(record.openedAt(), at))
            .map(time -> time.isNegative() ? Duration.ZERO : time)
            .ifPresent(all::add);
      }
    }
    return TimeTaken.of(all);
  }

  private static int repeats(List<CareRecord> own, Collection<CareRecord> all) {
    Map<String, List<CareRecord>> byLine =
        all.stream().collect(Collectors.groupingBy(record -> record.subject().line()));
    return (int)
        own.stream()
            .filter(
                record ->
                    byLine.getOrDefault(record.subject().line(), List.of()).stream()
                        .anyMatch(earlier -> record.repeats(earlier, AGAIN)))
            .count();
  }

  private static List<CauseCount> pareto(List<CareRecord> own) {
    Map<String, Long> counts =
        own.stream()
            .flatMap(record -> record.causeCode().stream())
            .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
    long explained = counts.values().stream().mapToLong(Long::longValue).sum();
    List<CauseCount> pareto = new ArrayList<>();
    long sofar = 0;
    for (Map.Entry<String, Long> entry : inOrder(counts)) {
      sofar += entry.getValue();
      pareto.add(
          new CauseCount(
              entry.getKey(), Math.toIntExact(entry.getValue()), (double) sofar / explained));
    }
    return pareto;
  }

  private static List<Map.Entry<String, Long>> inOrder(Map<String, Long> counts) {
    return counts.entrySet().stream()
        .sorted(
            Map.Entry.<String, Long>comparingByValue(Comparator.reverseOrder())
                .thenComparing(Map.Entry.comparingByKey()))
        .toList();
  }
}
