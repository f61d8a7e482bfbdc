package dev.filmward.diagnosis;

import java.util.List;

/** The signatures that Filmward comes with. */
final class BuiltInSignatures {
  static final List<Signature> ALL = List.of();

  private BuiltInSignatures() {}
}
