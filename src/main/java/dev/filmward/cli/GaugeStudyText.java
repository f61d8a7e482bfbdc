package dev.filmward.cli;

import dev.filmward.gauge.study.Components;
import dev.filmward.gauge.study.GaugeStudy;
import dev.filmward.gauge.study.GaugeVerdict;
import dev.filmward.gauge.study.LayerOutcome;
import dev.filmward.gauge.study.StudyAnova;
import dev.filmward.stats.AnovaTable.Part;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A gauge study for people: for each layer what varies, how much, and what that means. */
final class GaugeStudyText {
  private static final int MOST_PERCENT = 30;

  private GaugeStudyText() {}

  static String of(List<LayerOutcome> outcomes) {
    List<GaugeStudy> studies = new ArrayList<>();
    for (LayerOutcome outcome : outcomes) {
      if (outcome instanceof LayerOutcome.Studied studied) {
        studies.add(studied.study());
      }
    }
    if (studies.isEmpty()) {
      return "";
    }
    StringBuilder text = new StringBuilder();
    studies.forEach(study -> append(text, study));
    if (studies.size() > 1) {
      text.append("Worst is layer ").append(worst(studies)).append(".\n");
    }
    return text.append("Rules: ")
        .append(GaugeVerdict.SOURCE)
        .append(
            ".\nParts must be marked spots, and the probe coupled anew each time; else this is"
                + " jitter and not repeatability.\n")
        .toString();
  }

  /** Control characters in a name from a file must not steer a terminal. */
  static String printable(String text) {
    return text.replaceAll("\\p{Cntrl}", "\uFFFD");
  }

  private static String worst(List<GaugeStudy> studies) {
    return printable(
        studies.stream()
            .max(
                Comparator.comparing(GaugeStudy::verdict)
                    .thenComparingDouble(study -> study.percentStudyVariation()))
            .orElseThrow()
            .readings()
            .layer());
  }

  private static void append(StringBuilder text, GaugeStudy study) {
    text.append(
        printable(
            "Layer %s: %d parts, %d operators, %d trials"
                .formatted(
                    study.readings().layer(),
                    study.readings().parts().size(),
                    study.readings().operators().size(),
                    study.readings().trials())));
    text.append("\n\n");
    appendAnova(text, study.anova());
    text.append('\n');
    appendComponents(text, study);
    text.append('\n');
    sentences(study).forEach(sentence -> text.append(sentence).append('\n'));
    text.append('\n');
  }

  private static void appendAnova(StringBuilder text, StudyAnova anova) {
    text.append(
        "  %-16s %14s %6s %14s %10s %8s\n"
            .formatted("", "squares, um2", "df", "mean square", "F", "p"));
    appendLine(text, "part", anova.part());
    anova.operator().ifPresent(line -> appendLine(text, "operator", line));
    anova.interaction().ifPresent(line -> appendLine(text, "interaction", line));
    appendPart(text, "repeatability", anova.repeatability(), "");
    appendPart(text, "total", anova.total(), "");
    if (anova.isPooled()) {
      appendPart(text, "pooled error", anova.error(), "");
    }
  }

  private static void appendLine(StringBuilder text, String name, StudyAnova.Line line) {
    String test = line.p() < 0.0001 ? "< 0.0001" : format("%.4f", line.p());
    appendPart(text, name, line.part(), format(" %10.3f %8s", line.f(), test));
  }

  private static void appendPart(StringBuilder text, String name, Part part, String test) {
    text.append(
            format(
                "  %-16s %14.6g %6d %14.6g",
                name, part.sumOfSquares(), part.degrees(), part.meanSquare()))
        .append(test)
        .append('\n');
  }

  private static void appendComponents(StringBuilder text, GaugeStudy study) {
    Components shown = study.variance();
    text.append(
        "  %-16s %14s %10s %12s %12s\n"
            .formatted("", "variance, um2", "sigma, um", "% of study", "% of toler."));
    appendComponent(text, "gauge", shown.gauge(), study);
    appendComponent(text, "  repeatability", shown.repeatability(), study);
    if (study.hasReproducibility()) {
      appendComponent(text, "  reproducib.", shown.reproducibility(), study);
      appendComponent(text, "    operator", shown.operator(), study);
      appendComponent(text, "    interaction", shown.interaction(), study);
    }
    appendComponent(text, "part", shown.part(), study);
    appendComponent(text, "total", shown.total(), study);
  }

  private static void appendComponent(
      StringBuilder text, String name, double variance, GaugeStudy study) {
    String ofTolerance =
        study.tolerance().map(known -> format("%.1f", known.percent(variance))).orElse("-");
    text.append(
        format(
            "  %-16s %14.6g %10.4f %12.1f %12s\n",
            name,
            variance,
            Math.sqrt(variance),
            study.percentStudyVariation(variance),
            ofTolerance));
  }

  private static List<String> sentences(GaugeStudy study) {
    List<String> said = new ArrayList<>();
    said.add(
        format(
            "The gauge is %.1f %% of the study variation (95 %% confidence: %.1f to %.1f %%): %s.",
            study.percentStudyVariation(),
            study.share().percentLower(),
            study.share().percentUpper(),
            study.verdictForProcess().words()));
    said.add(tolerance(study));
    said.add(
        "It tells "
            + study.distinctCategories()
            + (study.distinctCategories() == 1 ? " category" : " distinct categories")
            + " apart; at least "
            + GaugeVerdict.CATEGORIES_WANTED
            + " are wanted.");
    said.add(interaction(study));
    if (study.verdict() == GaugeVerdict.NOT_ACCEPTABLE) {
      said.add("Above " + MOST_PERCENT + " %: " + mend(study));
    }
    return said;
  }

  private static String tolerance(GaugeStudy study) {
    Optional<GaugeVerdict> verdict = study.verdictForTolerance();
    return verdict.isEmpty()
        ? "No tolerance is known for this layer; name it with --structures FILE --structure CODE."
        : format(
            "Six sigma of the gauge are %.1f %% of the tolerance (%s): %s.",
            study.percentTolerance().orElseThrow(),
            study.tolerance().orElseThrow().kind().words(),
            verdict.get().words());
  }

  private static String interaction(GaugeStudy study) {
    if (study.anova().interaction().isEmpty()) {
      return "There was one operator, so reproducibility cannot be told; have at least two, three"
          + " are usual.";
    }
    double p = study.anova().interaction().get().p();
    return study.anova().isPooled()
        ? format(
            "Operators and parts do not interact (p %.2f), so that is pooled into the error.", p)
        : format("Operators and parts interact (p %.4f), so both are tested against that.", p);
  }

  private static String mend(GaugeStudy study) {
    Components shown = study.variance();
    return shown.repeatability() >= shown.reproducibility()
        ? "most of it is repeatability; look at coupling, the echo of this layer and averaging."
        : "most of it is between operators; look at how each of them finds the spot and couples.";
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
