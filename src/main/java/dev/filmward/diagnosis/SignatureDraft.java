package dev.filmward.diagnosis;

import static dev.filmward.diagnosis.Condition.Comparison.AT_LEAST;

import dev.filmward.diagnosis.Condition.Comparison;
import dev.filmward.diagnosis.Condition.Role;
import dev.filmward.diagnosis.Signature.Kind;
import java.util.ArrayList;
import java.util.List;

/** A signature being written down. One owner; not thread safe. */
final class SignatureDraft {
  /** From this on a pattern over the layers is taken for one. */
  static final double EXPLAINED = 0.75;

  /** Samples from a boundary at which a change is taken to have begun with it. */
  static final double AT_BOUNDARY = 2;

  /** A step that a drift does not explain much better. */
  static final double NO_DRIFT = -1;

  /** The same where a boundary already speaks for a step. */
  static final double HARDLY_DRIFT = -4;

  /** Part of the latest samples that screening flagged. */
  static final double FLAGGED_OFTEN = 0.05;

  private static final double WELL_EXPLAINED = 0.95;

  private final String code;
  private final String name;
  private final Kind kind;
  private final List<Condition> conditions = new ArrayList<>();
  private final List<Suspect> suspects = new ArrayList<>();
  private List<String> checks = List.of();

  private SignatureDraft(String code, String name, Kind kind) {
    this.code = code;
    this.name = name;
    this.kind = kind;
  }

  static SignatureDraft of(String code, String name, Kind kind) {
    return new SignatureDraft(code, name, kind);
  }

  SignatureDraft needs(
      Statistic statistic, Comparison comparison, double threshold, double weight) {
    conditions.add(new Condition(statistic, comparison, threshold, weight, Role.NEEDED));
    return this;
  }

  SignatureDraft supports(
      Statistic statistic, Comparison comparison, double threshold, double weight) {
    conditions.add(new Condition(statistic, comparison, threshold, weight, Role.SUPPORTS));
    return this;
  }

  /** A pattern over the layers that must explain much and better explains almost all. */
  SignatureDraft pattern(Statistic explained) {
    return needs(explained, AT_LEAST, EXPLAINED, 3)
        .supports(explained, AT_LEAST, WELL_EXPLAINED, 2);
  }

  SignatureDraft suspects(String cause, String words) {
    suspects.add(new Suspect(cause, words));
    return this;
  }

  SignatureDraft checks(String... words) {
    checks = List.of(words);
    return this;
  }

  Signature apart(String words) {
    return new Signature(code, name, kind, conditions, suspects, checks, words);
  }
}
