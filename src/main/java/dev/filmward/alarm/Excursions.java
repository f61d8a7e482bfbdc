package dev.filmward.alarm;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Structure;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Takes the verdict on a sample and the alarms of its line and structure that may still be going
 * on, gives the alarms that changed. Stateless: all that it remembers is in the alarms.
 *
 * <p>One excursion of one group is one alarm. Layers that share an extruder, or of which at least
 * 60 % deviate in the same way, are one group; so are all spreads across the web of a line; the
 * total goes with its layers. A signal within {@value #SAME_EXCURSION} samples of the last one
 * belongs to the same excursion, because the longest test reaches that far back.
 */
public final class Excursions {
  /** How many quiet samples end an excursion for good. */
  public static final int SAME_EXCURSION = 8;

  private static final double COMMON_SHARE = 0.6;

  private final Structure structure;
  private final Extruders extruders;

  public Excursions(Structure structure) {
    this.structure = structure;
    this.extruders = new Extruders(structure);
  }

  /**
   * Judges one sample.
   *
   * @param live alarms whose excursion is not yet over, oldest first
   */
  public List<AlarmChange> judge(SampleVerdict sample, List<Alarm> live) {
    List<AlarmChange> changes = new ArrayList<>();
    for (Deviation deviation : Deviation.values()) {
      List<Alarm> ofThisKind =
          live.stream().filter(alarm -> alarm.subject().deviation() == deviation).toList();
      changes.addAll(judge(sample, deviation, ofThisKind));
    }
    return changes;
  }

  private List<AlarmChange> judge(SampleVerdict sample, Deviation deviation, List<Alarm> live) {
    List<Subject> subjects = new ArrayList<>(live.stream().map(Alarm::subject).toList());
    List<Characteristic> deviating =
        sample.verdicts().stream()
            .filter(verdict -> verdict.opens(deviation))
            .map(Verdict::characteristic)
            .toList();
    boolean common = isCommon(deviating, subjects);
    for (Characteristic each : deviating) {
      if (!join(each, subjects, common)) {
        subjects.add(
            new Subject(
                sample.sample().line(), structure.code(), deviation, new TreeSet<>(List.of(each))));
      }
    }
    List<AlarmChange> changes = new ArrayList<>();
    for (int i = 0; i < subjects.size(); i++) {
      Optional<Alarm> known = i < live.size() ? Optional.of(live.get(i)) : Optional.empty();
      step(sample, subjects.get(i), known).ifPresent(changes::add);
    }
    return changes;
  }

  /** Puts a deviating characteristic into the subject that it belongs to, where there is one. */
  private boolean join(Characteristic deviating, List<Subject> subjects, boolean common) {
    for (int i = 0; i < subjects.size(); i++) {
      if (common || belongs(deviating, subjects.get(i))) {
        subjects.set(i, subjects.get(i).with(List.of(deviating)));
        return true;
      }
    }
    return false;
  }

  private boolean belongs(Characteristic deviating, Subject subject) {
    return subject.members().contains(deviating)
        || subject.deviation() == Deviation.SPREAD
        || deviating.kind() == Characteristic.Kind.TOTAL
        || subject.members().stream().anyMatch(member -> isTotalOrKin(member, deviating));
  }

  private boolean isTotalOrKin(Characteristic member, Characteristic deviating) {
    return member.kind() == Characteristic.Kind.TOTAL
        || extruders.share(member.position(), deviating.position());
  }

  private boolean isCommon(List<Characteristic> deviating, List<Subject> subjects) {
    TreeSet<Characteristic> layers = new TreeSet<>(deviating);
    subjects.forEach(subject -> layers.addAll(subject.members()));
    layers.removeIf(member -> member.kind() != Characteristic.Kind.LAYER);
    return layers.size() >= 2 && layers.size() >= COMMON_SHARE * structure.reported().size();
  }

  private static Optional<AlarmChange> step(
      SampleVerdict sample, Subject subject, Optional<Alarm> known) {
    List<Verdict> ofMembers =
        sample.verdicts().stream()
            .filter(verdict -> subject.members().contains(verdict.characteristic()))
            .toList();
    List<Verdict> speaking =
        ofMembers.stream().filter(verdict -> verdict.says(subject.deviation())).toList();
    if (speaking.isEmpty()) {
      return ofMembers.isEmpty() ? Optional.empty() : known.map(alarm -> quiet(sample, alarm));
    }
    Urgency urgency = speaking.stream().map(Verdict::urgency).reduce(Urgency.LEAST, Urgency::and);
    Alarm alarm = known.orElseGet(() -> opened(sample, subject));
    return Optional.of(
        new AlarmChange(
            alarm.signal(subject, urgency, sample.takenAt()),
            speaking.stream().map(Verdict::characteristic).toList()));
  }

  private static AlarmChange quiet(SampleVerdict sample, Alarm alarm) {
    return new AlarmChange(alarm.quiet(sample.takenAt()), Collections.emptyList());
  }

  private static Alarm opened(SampleVerdict sample, Subject subject) {
    Course course =
        new Course(
            sample.sample(),
            sample.takenAt(),
            sample.takenAt(),
            Optional.empty(),
            0,
            sample.historical());
    return new Alarm(
        0,
        subject,
        AlarmState.UNACKNOWLEDGED,
        Priority.LOW,
        false,
        course,
        Optional.empty(),
        Optional.empty());
  }
}
