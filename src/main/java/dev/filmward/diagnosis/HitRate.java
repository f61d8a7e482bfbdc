package dev.filmward.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * How often diagnoses named the true cause, as people marked it afterwards. Alarms whose cause was
 * not found, or is in no list, say nothing about it. Immutable.
 */
public record HitRate(Count all, Map<String, Count> byCause) {
  private static final Set<String> NO_ANSWER =
      Set.of(Causes.OTHER, Causes.NOT_FOUND_YET, Causes.NO_CAUSE_FOUND);

  /**
   * Alarms with a true cause.
   *
   * @param first of them the true cause was in first place
   * @param shown of them it was among the first {@value Diagnosis#MOST_SHOWN}
   * @param silent of them nothing was named
   */
  public record Count(int alarms, int first, int shown, int silent) {
    private static Count of(List<NamedCause> some) {
      int first = 0;
      int shown = 0;
      int silent = 0;
      for (NamedCause one : some) {
        int rank = one.rank();
        first += rank == 1 ? 1 : 0;
        shown += rank >= 1 && rank <= Diagnosis.MOST_SHOWN ? 1 : 0;
        silent += one.named().isEmpty() ? 1 : 0;
      }
      return new Count(some.size(), first, shown, silent);
    }
  }

  /** Of alarms, each once. */
  public static HitRate of(List<NamedCause> outcomes) {
    List<NamedCause> answered =
        outcomes.stream().filter(outcome -> isAnswer(outcome.cause())).toList();
    Map<String, List<NamedCause>> byCause = new TreeMap<>();
    answered.forEach(
        outcome ->
            byCause.computeIfAbsent(outcome.cause(), cause -> new ArrayList<>()).add(outcome));
    Map<String, Count> counts = new TreeMap<>();
    byCause.forEach((cause, some) -> counts.put(cause, Count.of(some)));
    return new HitRate(Count.of(answered), counts);
  }

  /** Whether a finding with that cause says something about diagnoses. */
  public static boolean isAnswer(String cause) {
    return !NO_ANSWER.contains(cause);
  }
}
