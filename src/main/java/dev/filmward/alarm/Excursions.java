package dev.filmward.alarm;

import dev.filmward.film.Characteristic;
import dev.filmward.film.Structure;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Takes the verdict on a sample and the excursions of its line and structure that may still go on,
 * gives what the sample did to them. Stateless: all that it remembers is in the excursions.
 *
 * <p>Layers that share an extruder, or of which at least 60 % deviate in the same way, are one
 * group; so are all spreads across the web of a line; the total goes with its layers. A signal
 * within {@value Course#SAME_EXCURSION} samples of the last one belongs to the same excursion.
 */
public final class Excursions {
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
   * @param known excursions, oldest first; those that are over for good, and those from before the
   *     line made something else, are passed over
   */
  public List<ExcursionStep> judge(SampleVerdict sample, List<Excursion> known) {
    List<ExcursionStep> steps = new ArrayList<>();
    for (Deviation deviation : Deviation.values()) {
      List<Excursion> live =
          known.stream()
              .filter(excursion -> excursion.isLiveAt(sample))
              .filter(excursion -> excursion.subject().deviation() == deviation)
              .toList();
      steps.addAll(judge(sample, deviation, live));
    }
    return steps;
  }

  private List<ExcursionStep> judge(
      SampleVerdict sample, Deviation deviation, List<Excursion> live) {
    List<Subject> subjects = new ArrayList<>(live.stream().map(Excursion::subject).toList());
    List<Characteristic> deviating =
        sample.verdicts().stream()
            .filter(verdict -> verdict.opens(deviation))
            .map(Verdict::characteristic)
            .toList();
    boolean common = isCommon(deviating, subjects);
    for (Characteristic each : deviating) {
      if (!join(each, subjects, common)) {
        subjects.add(Subject.of(sample.sample(), deviation, each));
      }
    }
    List<ExcursionStep> steps = new ArrayList<>();
    for (int i = 0; i < subjects.size(); i++) {
      Optional<Excursion> before = i < live.size() ? Optional.of(live.get(i)) : Optional.empty();
      step(sample, subjects.get(i), before).ifPresent(steps::add);
    }
    return steps;
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
        || subject.members().equals(Set.of(Characteristic.total()))
        || subject.members().stream()
            .anyMatch(member -> extruders.share(member.position(), deviating.position()));
  }

  private boolean isCommon(List<Characteristic> deviating, List<Subject> subjects) {
    TreeSet<Characteristic> layers = new TreeSet<>(deviating);
    subjects.forEach(subject -> layers.addAll(subject.members()));
    layers.removeIf(member -> member.kind() != Characteristic.Kind.LAYER);
    return layers.size() >= 2 && layers.size() >= COMMON_SHARE * structure.reported().size();
  }

  private static Optional<ExcursionStep> step(
      SampleVerdict sample, Subject subject, Optional<Excursion> before) {
    List<Verdict> ofMembers =
        sample.verdicts().stream()
            .filter(verdict -> subject.members().contains(verdict.characteristic()))
            .toList();
    List<Verdict> speaking =
        ofMembers.stream().filter(verdict -> verdict.says(subject.deviation())).toList();
    if (speaking.isEmpty()) {
      return before
          .filter(excursion -> !ofMembers.isEmpty())
          .map(was -> new ExcursionStep(before, was.quiet(sample), List.of()));
    }
    Urgency urgency = speaking.stream().map(Verdict::urgency).reduce(Urgency.LEAST, Urgency::and);
    Excursion was = before.orElseGet(() -> opened(sample, subject));
    return Optional.of(
        new ExcursionStep(
            before,
            was.signal(subject, urgency, sample),
            speaking.stream().map(Verdict::characteristic).toList()));
  }

  private static Excursion opened(SampleVerdict sample, Subject subject) {
    return new Excursion(
        subject,
        Priority.LOW,
        false,
        Course.opened(sample.sample(), sample.takenAt()),
        sample.mode(),
        false,
        Optional.empty());
  }
}
