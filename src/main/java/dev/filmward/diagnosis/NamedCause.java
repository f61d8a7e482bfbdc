package dev.filmward.diagnosis;

import java.util.List;

/**
 * What a diagnosis named when a person said what the true cause of an alarm was. Immutable.
 *
 * @param cause code of the true cause
 * @param named what was named, best first
 */
public record NamedCause(String cause, List<Named> named) {
  public NamedCause {
    named = List.copyOf(named);
    if (cause.isBlank()) {
      throw new IllegalArgumentException("a true cause has a code");
    }
  }

  /** A signature, and the codes of the causes that it points to. */
  public record Named(String signature, List<String> causes) {
    public Named {
      causes = List.copyOf(causes);
    }
  }

  /** That diagnosis beside that cause. */
  public static NamedCause of(String cause, Diagnosis diagnosis) {
    return new NamedCause(
        cause,
        diagnosis.candidates().stream()
            .map(Candidate::signature)
            .map(
                signature ->
                    new Named(
                        signature.code(), signature.causes().stream().map(Suspect::code).toList()))
            .toList());
  }

  /** The place, from 1, of the first that points to the true cause; 0 where none does. */
  public int rank() {
    for (int i = 0; i < named.size(); i++) {
      if (named.get(i).causes().contains(cause)) {
        return i + 1;
      }
    }
    return 0;
  }
}
