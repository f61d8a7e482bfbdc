package dev.filmward.gauge.screen;

import dev.filmward.film.Sample;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The samples of a production before the one to be screened, in time order, the last {@value #MOST}
 * of them. Which of them say what is usual depends on each of them alone, compared with the
 * structure's targets, and on what people decided; so the flags of a sample follow from it and so
 * many before it, whatever the pieces in which they came. One owner; not thread safe.
 */
public final class RecentSamples {
  /** How many samples back a flag may depend on. */
  public static final int MOST = 25;

  private final Screen screen;
  private final Deque<Entry> entries = new ArrayDeque<>();
  private @Nullable Usual usual;

  RecentSamples(Screen screen) {
    this.screen = screen;
  }

  /** What people decided about a sample. */
  public enum Standing {
    /** Nothing: it counts unless it is misread by itself. */
    BY_RULE,
    /** It was put back: it counts. */
    PUT_BACK,
    /** It was left out: it does not count. */
    LEFT_OUT
  }

  private record Entry(HeardSample heard, boolean counts) {}

  /** Adds the next sample in time order. */
  public void add(Sample sample, Standing standing) {
    if (!screen.isScreened(sample)) {
      return;
    }
    HeardSample heard = screen.heard(sample);
    boolean counts =
        switch (standing) {
          case BY_RULE -> screen.isPlausible(heard);
          case PUT_BACK -> true;
          case LEFT_OUT -> false;
        };
    entries.addLast(new Entry(heard, counts));
    if (entries.size() > MOST) {
      entries.removeFirst();
    }
    usual = null;
  }

  /** What is usual now. */
  Usual usual() {
    Usual known = usual;
    if (known == null) {
      List<HeardSample> counting = counting();
      known =
          counting.size() >= Usual.ENOUGH
              ? Usual.of(counting, screen.film())
              : Usual.ofTargets(screen.film());
      usual = known;
    }
    return known;
  }

  /** What is usual now, by layer, um; NaN where it is not known. */
  public List<Double> usualUm() {
    return IntStream.rangeClosed(1, screen.film().layers())
        .mapToObj(position -> screen.film().um(position, usual().layerNs(position)))
        .toList();
  }

  /** Those that say what is usual, oldest first. */
  List<HeardSample> counting() {
    return entries.stream().filter(Entry::counts).map(Entry::heard).toList();
  }

  Optional<HeardSample> last() {
    return Optional.ofNullable(entries.peekLast()).map(Entry::heard);
  }

  /** The last ones, the newest first. */
  List<HeardSample> newest(int most) {
    List<HeardSample> newest = new ArrayList<>();
    Iterator<Entry> back = entries.descendingIterator();
    while (back.hasNext() && newest.size() < most) {
      newest.add(back.next().heard());
    }
    return newest;
  }
}
