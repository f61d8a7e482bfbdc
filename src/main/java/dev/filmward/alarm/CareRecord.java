package dev.filmward.alarm;

import dev.filmward.diagnosis.Causes;
import java.time.Duration;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * What the figures of alarm care need of one alarm.
 *
 * @param historical whether it was old news when it came; nobody could have been quick then
 * @param causeAt when a cause was first named
 * @param causeCode the cause that holds; empty where none does
 */
public record CareRecord(
    Subject subject,
    boolean historical,
    Instant openedAt,
    Instant lastSignalAt,
    Optional<Instant> acknowledgedAt,
    Optional<Instant> causeAt,
    Optional<String> causeCode,
    boolean closed) {

  /**
   * Of an alarm.
   *
   * @param findings all that was ever found about it, oldest first
   */
  public static CareRecord of(Alarm alarm, List<CodedFinding> findings) {
    Course course = alarm.excursion().course();
    Optional<CodedFinding> holds =
        alarm.finding().isEmpty() || findings.isEmpty()
            ? Optional.empty()
            : Optional.of(findings.get(findings.size() - 1));
    return new CareRecord(
        alarm.subject(),
        alarm.historical(),
        course.openedAt(),
        course.lastSignalAt(),
        alarm.acknowledgement().map(Acknowledgement::at),
        findings.stream()
            .filter(CareRecord::namesCause)
            .findFirst()
            .map(found -> found.finding().at()),
        holds.filter(CareRecord::namesCause).map(CodedFinding::code),
        alarm.isClosed());
  }

  private static boolean namesCause(CodedFinding found) {
    return !found.code().equals(Causes.NOT_FOUND_YET);
  }

  /**
   * Whether it is about the same as an earlier one, whose last signal came at most so long before.
   */
  boolean repeats(CareRecord earlier, Duration within) {
    return earlier.openedAt.isBefore(openedAt)
        && !earlier.lastSignalAt.isAfter(openedAt)
        && Duration.between(earlier.lastSignalAt, openedAt).compareTo(within) <= 0
        && subject.line().equals(earlier.subject.line())
        && subject.structure().equals(earlier.subject.structure())
        && subject.deviation() == earlier.subject.deviation()
        && !Collections.disjoint(subject.members(), earlier.subject.members());
  }
}
