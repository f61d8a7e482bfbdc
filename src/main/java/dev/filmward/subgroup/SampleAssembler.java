package dev.filmward.subgroup;

import dev.filmward.film.ReadingRun;
import dev.filmward.film.ReadingSink;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Puts readings together into samples.
 *
 * <p>Keeps the latest {@value #OPEN_SAMPLES} samples open, so that rows of neighbouring samples may
 * be mixed; the one that was opened first is handed on when another must be opened, and the rest by
 * {@link #finish}. A sample whose rows lie further apart, or that has two values for one place, is
 * handed on more than once, in parts: the receiver joins them, and the later value stands. Memory
 * does not grow with the file. For one thread.
 */
public final class SampleAssembler implements ReadingSink {
  static final int OPEN_SAMPLES = 64;

  private final Consumer<SampleDraft> complete;
  private final OpenDrafts open = new OpenDrafts(OPEN_SAMPLES);
  private final Deque<SampleDraft> spare = new ArrayDeque<>();
  private @Nullable SampleDraft current;
  private @Nullable SampleKey currentKey;
  private @Nullable Instant currentTime;
  private long opened;
  private long repeated;

  public SampleAssembler(Consumer<SampleDraft> complete) {
    this.complete = complete;
  }

  @Override
  public void reading(
      SampleKey key, Instant takenAt, Structure structure, int position, int lane, double um) {
    SampleDraft draft = draft(key, takenAt, structure);
    Place place = draft.put(position, lane, um);
    if (place == Place.SAME) {
      repeated++;
    } else if (place == Place.TAKEN) {
      handOn(draft);
      draft(key, takenAt, structure).put(position, lane, um);
    }
  }

  @Override
  public void readings(SampleKey key, Instant takenAt, Structure structure, ReadingRun run) {
    int taken = draft(key, takenAt, structure).fill(run, 0);
    while (taken < run.size()) {
      reading(key, takenAt, structure, run.position(taken), run.lane(taken), run.um(taken));
      taken = draft(key, takenAt, structure).fill(run, taken + 1);
    }
  }

  @Override
  public void temperature(SampleKey key, Instant takenAt, Structure structure, int lane, double c) {
    draft(key, takenAt, structure).putCelsius(lane, c);
  }

  @Override
  public void missing(SampleKey key, Instant takenAt, Structure structure, int position, int lane) {
    draft(key, takenAt, structure).putMissing(lane);
  }

  /** Readings that said again what the sample, still open, had said before. */
  public long repeated() {
    return repeated;
  }

  /** Takes a draft back that was handed on and is needed no more. */
  public void takeBack(SampleDraft draft) {
    spare.push(draft);
  }

  /** Hands on what is still open. */
  public void finish() {
    finish(complete);
  }

  /** Hands what is still open on to somebody else. */
  public void finish(Consumer<SampleDraft> stillOpen) {
    open.removeAll(stillOpen);
    current = null;
    currentKey = null;
    opened = 0;
  }

  @SuppressWarnings("ReferenceEquality") // the sink's contract lets us skip the comparison
  private SampleDraft draft(SampleKey key, Instant takenAt, Structure structure) {
    SampleDraft draft = current;
    if (draft == null || key != currentKey) {
      draft = lookUp(key, takenAt, structure);
      current = draft;
      currentKey = key;
      currentTime = null;
    }
    if (takenAt != currentTime) {
      draft.seenAt(takenAt);
      currentTime = takenAt;
    }
    return draft;
  }

  private SampleDraft lookUp(SampleKey key, Instant takenAt, Structure structure) {
    SampleDraft known = open.find(key);
    if (known != null) {
      return known;
    }
    if (open.isFull()) {
      handOn(open.first());
    }
    SampleDraft fresh =
        spare.isEmpty()
            ? new SampleDraft(key, structure, takenAt)
            : spare.pop().reuse(key, structure, takenAt);
    fresh.number(opened++);
    open.add(fresh);
    return fresh;
  }

  private void handOn(SampleDraft done) {
    open.remove(done);
    if (current == done) {
      current = null;
    }
    complete.accept(done);
  }
}
