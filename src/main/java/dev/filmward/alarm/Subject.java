package dev.filmward.alarm;

import dev.filmward.diagnosis.Pattern;
import dev.filmward.film.Characteristic;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import java.util.Collection;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * What an alarm is about: which characteristics of a structure on a line deviate, and how.
 *
 * @param members at least one, in chart order
 */
public record Subject(
    String line, String structure, Deviation deviation, SortedSet<Characteristic> members) {
  public Subject {
    if (members.isEmpty()) {
      throw new IllegalArgumentException("an alarm is about something");
    }
    members = new TreeSet<>(members);
  }

  static Subject of(SampleKey sample, Deviation deviation, Characteristic member) {
    return new Subject(sample.line(), sample.structure(), deviation, new TreeSet<>(Set.of(member)));
  }

  /** The shape of the deviation. */
  public Pattern pattern(Structure structure) {
    if (deviation == Deviation.SPREAD) {
      return Pattern.ACROSS_THE_WEB;
    }
    long layers =
        members.stream().filter(member -> member.kind() == Characteristic.Kind.LAYER).count();
    boolean some = layers > 0 && layers < structure.reported().size();
    return some ? Pattern.SOME_LAYERS : Pattern.ALL_LAYERS;
  }

  Subject with(Collection<Characteristic> more) {
    SortedSet<Characteristic> all = new TreeSet<>(members);
    all.addAll(more);
    return new Subject(line, structure, deviation, all);
  }
}
