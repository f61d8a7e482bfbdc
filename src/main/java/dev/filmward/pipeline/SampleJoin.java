package dev.filmward.pipeline;

import dev.filmward.film.SampleKey;
import dev.filmward.subgroup.Place;
import dev.filmward.subgroup.SampleDraft;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Takes the parts of a file in their order, and joins samples that were cut where one part ends and
 * the next one begins. For one thread.
 */
final class SampleJoin {
  private final Receiver receiver;
  private final SampleFigures joined;
  private Map<SampleKey, SampleDraft> open = new LinkedHashMap<>();

  /** Takes samples that are whole, as far as the last parts tell. */
  interface Receiver {
    void add(SampleFigures samples, int sample);

    /** A sample has two values for one place. */
    void contradiction();
  }

  SampleJoin(AnalysisScope scope, Receiver receiver) {
    this.joined = new SampleFigures(scope);
    this.receiver = receiver;
  }

  /** Takes the next part; it may be used again afterwards. */
  void add(ReadPart part) {
    for (SampleDraft draft : part.first()) {
      SampleDraft whole = withEarlier(draft);
      handOn(whole);
      part.takeBack(whole);
    }
    Map<SampleKey, SampleDraft> next = open(part.stillOpen());
    finish();
    SampleFigures inside = part.inside();
    for (int sample = 0; sample < inside.count(); sample++) {
      receiver.add(inside, sample);
    }
    open = next;
  }

  /** Hands on what is still open. */
  void finish() {
    open.values().forEach(this::handOn);
    open.clear();
  }

  private Map<SampleKey, SampleDraft> open(List<SampleDraft> drafts) {
    Map<SampleKey, SampleDraft> next = new LinkedHashMap<>();
    for (SampleDraft draft : drafts) {
      next.put(draft.key(), withEarlier(draft));
    }
    return next;
  }

  private SampleDraft withEarlier(SampleDraft draft) {
    SampleDraft earlier = open.remove(draft.key());
    if (earlier == null) {
      return draft;
    }
    if (earlier.putAll(draft) == Place.TAKEN) {
      receiver.contradiction();
    }
    return earlier;
  }

  private void handOn(SampleDraft draft) {
    joined.clear();
    joined.add(draft);
    receiver.add(joined, 0);
  }
}
