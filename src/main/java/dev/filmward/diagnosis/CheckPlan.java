package dev.filmward.diagnosis;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What is looked at first, in order: for each pattern, and for a suspected cause where the plant
 * has written that down. Immutable.
 *
 * @param byPattern at least one check for every pattern
 * @param byCause checks by the code of the cause
 */
public record CheckPlan(Map<Pattern, List<String>> byPattern, Map<String, List<String>> byCause) {
  private static final int MOST = 12;
  private static final int LONGEST = 200;

  /** What holds until the plant has a plan of its own. */
  public static final CheckPlan BUILT_IN =
      new CheckPlan(
          Arrays.stream(Pattern.values())
              .collect(Collectors.toMap(Function.identity(), FirstChecks::of)),
          Map.of());

  public CheckPlan {
    Map<Pattern, List<String>> patterns = new EnumMap<>(Pattern.class);
    for (Pattern pattern : Pattern.values()) {
      patterns.put(pattern, checked(pattern.words(), byPattern.getOrDefault(pattern, List.of())));
    }
    Map<String, List<String>> causes = new LinkedHashMap<>();
    byCause.forEach((code, checks) -> causes.put(code, checked(code, checks)));
    byPattern = patterns;
    byCause = causes;
  }

  /** Checks for an alarm of a pattern, whatever its cause. */
  public List<String> of(Pattern pattern) {
    return byPattern.getOrDefault(pattern, List.of());
  }

  /** Whether the plan for an alarm of a pattern has that check, or one for any cause has it. */
  public boolean asksFor(String check, Pattern pattern) {
    return of(pattern).contains(check)
        || byCause.values().stream().anyMatch(checks -> checks.contains(check));
  }

  private static List<String> checked(String topic, List<String> checks) {
    if (checks.isEmpty() || checks.size() > MOST) {
      throw new IllegalArgumentException(
          "\"" + topic + "\" needs 1 to " + MOST + " checks, not " + checks.size());
    }
    if (new HashSet<>(checks).size() < checks.size()) {
      throw new IllegalArgumentException("\"" + topic + "\" has the same check twice");
    }
    for (String check : checks) {
      if (check.isBlank() || check.length() > LONGEST) {
        throw new IllegalArgumentException(
            "a check of \"" + topic + "\" has no words, or more than " + LONGEST + " characters");
      }
    }
    return List.copyOf(checks);
  }
}
