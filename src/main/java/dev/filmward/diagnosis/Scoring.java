package dev.filmward.diagnosis;

import dev.filmward.diagnosis.Condition.Role;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Compares what was found with signatures. Immutable. */
final class Scoring {
  /** Scores nearer than this are taken for alike. */
  static final double ALIKE = 0.06;

  private static final Comparator<Candidate> BEST_FIRST =
      Comparator.comparingDouble(Candidate::score)
          .thenComparingDouble(Scoring::fulfilled)
          .reversed()
          .thenComparing(candidate -> candidate.signature().code());

  private final Findings findings;

  Scoring(Findings findings) {
    this.findings = findings;
  }

  List<Candidate> candidates(Signatures signatures) {
    return signatures.all().stream()
        .map(this::candidate)
        .flatMap(Optional::stream)
        .sorted(BEST_FIRST)
        .toList();
  }

  /** Those that are as good as the best one and say something else of the same change. */
  static List<Ambiguity> ambiguous(List<Candidate> candidates) {
    if (candidates.isEmpty()) {
      return List.of();
    }
    Candidate best = candidates.get(0);
    List<Candidate> alike =
        candidates.stream()
            .filter(one -> one.score() >= best.score() - ALIKE && facet(one) == facet(best))
            .toList();
    if (alike.size() < 2) {
      return List.of();
    }
    List<String> names = alike.stream().map(one -> one.signature().name()).toList();
    List<String> settles =
        alike.stream().map(one -> one.signature().tellsApart()).distinct().toList();
    return List.of(
        new Ambiguity(
            alike.stream().map(one -> one.signature().code()).toList(),
            "These fit the readings alike: "
                + String.join("; ", names)
                + ". What settles it: "
                + String.join(" ", settles)));
  }

  private static Facet facet(Candidate candidate) {
    return candidate.signature().conditions().get(0).statistic().facet();
  }

  private static double fulfilled(Candidate candidate) {
    return candidate.evidence().stream()
        .mapToDouble(evidence -> evidence.condition().weight() * evidence.degree())
        .sum();
  }

  private Optional<Candidate> candidate(Signature signature) {
    List<Evidence> evidence = new ArrayList<>();
    double met = 0;
    double all = 0;
    for (Condition condition : signature.conditions()) {
      Optional<Finding> found = findings.find(condition.statistic());
      boolean isMet = found.map(finding -> condition.isMet(finding.value())).orElse(false);
      if (condition.role() == Role.NEEDED && !isMet) {
        return Optional.empty();
      }
      if (found.isPresent()) {
        Evidence one = evidence(condition, found.get(), evidence);
        evidence.add(one);
        met += condition.weight() * one.degree();
        all += condition.weight();
      }
    }
    Condition about = signature.conditions().get(0);
    Finding subject = findings.find(about.statistic()).orElseThrow();
    return Optional.of(
        new Candidate(
            signature,
            all == 0 ? 0 : met / all,
            subject.positions(),
            subject.lanes(),
            findings.since(about.statistic().facet()),
            evidence));
  }

  /** What was told of a statistic before is not told again. */
  private static Evidence evidence(Condition condition, Finding found, List<Evidence> before) {
    boolean isTold =
        before.stream().anyMatch(one -> one.condition().statistic() == condition.statistic());
    return new Evidence(
        condition,
        found.value(),
        condition.degree(found.value()),
        isTold ? Sentences.again(condition, found) : Sentences.of(condition, found));
  }
}
