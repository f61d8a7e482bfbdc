package dev.filmward.subgroup;

import dev.filmward.film.SampleKey;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * A few drafts in the order in which they were opened. Looks through all of them for a sample, by
 * its hash first, which with so few is as quick as a map and allocates nothing. For one thread.
 */
final class OpenDrafts {
  private final SampleDraft[] drafts;
  private final int[] hashes;
  private int first;
  private int size;

  /**
   * @param most a power of two
   */
  OpenDrafts(int most) {
    this.drafts = new SampleDraft[most];
    this.hashes = new int[most];
  }

  boolean isFull() {
    return size == drafts.length;
  }

  /** The draft of a sample, or null. */
  @Nullable SampleDraft find(SampleKey key) {
    int hash = key.hashCode();
    for (int i = 0; i < size; i++) {
      int at = place(i);
      if (hashes[at] == hash && drafts[at].key().equals(key)) {
        return drafts[at];
      }
    }
    return null;
  }

  /** The one that was opened first; there must be one. */
  SampleDraft first() {
    return drafts[first];
  }

  /** There must be room. */
  void add(SampleDraft draft) {
    int at = place(size);
    drafts[at] = draft;
    hashes[at] = draft.key().hashCode();
    size++;
  }

  void remove(SampleDraft draft) {
    int index = 0;
    while (drafts[place(index)] != draft) {
      index++;
    }
    for (; index > 0; index--) {
      drafts[place(index)] = drafts[place(index - 1)];
      hashes[place(index)] = hashes[place(index - 1)];
    }
    first = place(1);
    size--;
  }

  void removeAll(Consumer<SampleDraft> receiver) {
    for (int i = 0; i < size; i++) {
      receiver.accept(drafts[place(i)]);
    }
    size = 0;
  }

  private int place(int index) {
    return (first + index) & (drafts.length - 1);
  }
}
