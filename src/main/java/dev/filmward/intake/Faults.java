package dev.filmward.intake;

import java.util.ArrayList;
import java.util.List;

/** Collects what is wrong in a structures or mapping file. One owner, one thread. */
final class Faults {
  private static final int MOST = 200;

  private final String file;
  private final List<String> messages = new ArrayList<>();
  private int more;

  Faults(String file) {
    this.file = file;
  }

  /** Notes one; the message says what, and what instead. */
  void add(int line, String message) {
    if (messages.size() < MOST) {
      messages.add(file + ", line " + line + ", " + message);
    } else {
      more++;
    }
  }

  /** Throws all that was noted, if anything was. */
  void throwIfAny() throws StructuresFault {
    if (!messages.isEmpty()) {
      throw new StructuresFault(all());
    }
  }

  /** All that was noted; of very many, how many more there are. */
  List<String> all() {
    List<String> all = new ArrayList<>(messages);
    if (more > 0) {
      all.add("and " + Words.count(more, "more fault"));
    }
    return all;
  }
}
