package dev.filmward.intake;

import java.util.List;

/**
 * Everything that is wrong in a mapping file, each fault with where, what, and what instead. The
 * message holds them all, one a line.
 */
public final class MappingFault extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient List<String> faults;

  public MappingFault(List<String> faults) {
    super(String.join("\n", faults));
    this.faults = List.copyOf(faults);
  }

  public List<String> faults() {
    return faults;
  }
}
