package dev.filmward.pipeline;

import dev.filmward.alarm.CodedFinding;
import dev.filmward.alarm.Finding;
import dev.filmward.diagnosis.Cause;
import dev.filmward.diagnosis.Causes;
import java.time.Instant;
import java.util.Optional;

/** Turns what a person says into a finding with a cause of the list. Stateless. */
final class CauseNaming {
  private CauseNaming() {}

  /**
   * @param before what is found about the alarm so far; its cause may be retired since
   * @throws IllegalArgumentException if there is no such cause to choose from
   */
  static CodedFinding finding(
      Causes causes, Optional<CodedFinding> before, Explanation given, Instant at) {
    return switch (given.cause()) {
      case Causes.NOT_FOUND_YET, Finding.NOT_FOUND_YET ->
          coded(Causes.NOT_FOUND_YET, Finding.NOT_FOUND_YET, given, at);
      case Causes.OTHER -> {
        if (given.note().isBlank()) {
          throw new IllegalArgumentException("another cause needs words: write which one");
        }
        yield coded(Causes.OTHER, given.note(), given, at);
      }
      default -> {
        Cause cause = chosen(causes, before, given.cause());
        yield coded(cause.code(), cause.words(), given, at);
      }
    };
  }

  private static Cause chosen(Causes causes, Optional<CodedFinding> before, String named) {
    Cause cause =
        causes
            .find(named)
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "no cause \""
                            + named
                            + "\"; choose one of the list, or \"other\" and say which"));
    boolean isKept = before.filter(found -> found.code().equals(cause.code())).isPresent();
    if (!cause.isActive() && !isKept) {
      throw new IllegalArgumentException(
          "the cause \"" + cause.words() + "\" is retired; choose another one");
    }
    return cause;
  }

  private static CodedFinding coded(String code, String words, Explanation given, Instant at) {
    String note = code.equals(Causes.OTHER) ? "" : given.note();
    return new CodedFinding(code, note, new Finding(words, given.action(), given.by(), at));
  }

  /** As the history of the alarm has it. */
  static String words(CodedFinding found) {
    String note = found.note().isBlank() ? "" : " (" + found.note() + ")";
    String action = found.finding().action();
    return "cause: "
        + found.finding().cause()
        + note
        + (action.isBlank() ? "; no action yet" : "; action: " + action);
  }
}
