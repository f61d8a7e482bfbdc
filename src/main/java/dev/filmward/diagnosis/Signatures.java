package dev.filmward.diagnosis;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The signatures that a plant looks for. Immutable. */
public record Signatures(List<Signature> all) {
  private static final int MOST = 100;

  public Signatures {
    all = List.copyOf(all);
    if (all.size() > MOST) {
      throw new IllegalArgumentException(
          all.size() + " signatures are too many; at most " + MOST + " are looked for");
    }
    Set<String> codes = new HashSet<>();
    for (Signature signature : all) {
      if (!codes.add(signature.code())) {
        throw new IllegalArgumentException("the code \"" + signature.code() + "\" is taken");
      }
    }
  }

  /** What holds until the plant has signatures of its own. */
  public static Signatures builtIn() {
    return new Signatures(BuiltInSignatures.ALL);
  }

  public Optional<Signature> find(String code) {
    return all.stream().filter(signature -> signature.code().equals(code)).findFirst();
  }
}
