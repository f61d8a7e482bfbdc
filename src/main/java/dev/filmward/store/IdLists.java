package dev.filmward.store;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Ids for {@code IN (<ids>)}, in lists of few lengths: the last id is repeated up to the next one.
 * Every length is a statement of its own, which the library and the database prepare and keep.
 */
record IdLists(List<List<Long>> lists) {
  private static final int LONGEST = 256;
  private static final int STEP = 4;

  IdLists {
    lists = List.copyOf(lists);
  }

  static IdLists of(List<Long> ids) {
    List<List<Long>> lists = new ArrayList<>();
    for (int from = 0; from < ids.size(); from += LONGEST) {
      lists.add(padded(ids.subList(from, Math.min(ids.size(), from + LONGEST))));
    }
    return new IdLists(lists);
  }

  private static List<Long> padded(List<Long> ids) {
    int length = 1;
    while (length < ids.size()) {
      length *= STEP;
    }
    List<Long> padded = new ArrayList<>(ids);
    padded.addAll(Collections.nCopies(length - ids.size(), ids.get(ids.size() - 1)));
    return List.copyOf(padded);
  }
}
