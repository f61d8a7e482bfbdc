package dev.filmward.cli;

import dev.filmward.gauge.study.Linearity;
import dev.filmward.gauge.study.Linearity.Weighting;
import dev.filmward.gauge.study.ReferencePiece;
import dev.filmward.gauge.study.ReferenceReadings;
import dev.filmward.pipeline.CheckStandard;
import dev.filmward.stats.WeightedLine;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** How far a gauge is off on pieces of known thickness, for people. */
final class ReferenceText {
  private static final double NOTICED_BELOW = 0.05;
  private static final double LEAST_SAID = 0.001;

  private ReferenceText() {}

  /** Empty where there are no such pieces. */
  static String of(ReferenceReadings readings) {
    StringBuilder text = new StringBuilder();
    for (String layer : readings.layers()) {
      List<ReferencePiece> pieces = readings.pieces(layer);
      text.append(GaugeStudyText.printable("Layer " + layer + ": bias on known pieces, um"))
          .append("\n\n")
          .append(
              "  %-16s %10s %9s %9s %9s %18s %9s\n"
                  .formatted("part", "reference", "readings", "bias", "sigma", "95 %", "p"));
      pieces.forEach(piece -> text.append(row(piece)));
      text.append('\n').append(linearity(pieces)).append('\n');
      pieces.forEach(
          piece -> CheckStandard.of(piece).ifPresent(one -> text.append(words(piece, one))));
      text.append('\n');
    }
    return text.toString();
  }

  private static String row(ReferencePiece piece) {
    String name = GaugeStudyText.printable(piece.name());
    if (!piece.hasSpread()) {
      return format(
          "  %-16s %10.3f %9d  no spread, so no test; measure again with more digits\n",
          name, piece.referenceUm(), piece.um().size());
    }
    ReferencePiece.Bias bias = piece.bias();
    return format(
        "  %-16s %10.3f %9d %9.4f %9.4f %18s %9s%s\n",
        name,
        piece.referenceUm(),
        piece.um().size(),
        bias.value(),
        bias.deviation(),
        format("%.4f to %.4f", bias.lower(), bias.upper()),
        small(bias.p()),
        bias.isReal() ? "  more than chance" : "");
  }

  private static String words(ReferencePiece piece, CheckStandard standard) {
    return format(
        "Over time part %s lies between %.3f and %.3f um: %s.\n",
        GaugeStudyText.printable(piece.name()),
        standard.value().lower(),
        standard.value().upper(),
        standard.beyond().isEmpty()
            ? "stable"
            : "not stable, readings beyond the limits: " + standard.beyond().size());
  }

  private static String linearity(List<ReferencePiece> pieces) {
    Optional<Linearity> linearity = Linearity.of(pieces, Weighting.ALIKE);
    if (linearity.isEmpty()) {
      return "Linearity takes pieces of two thicknesses at least, five are usual.";
    }
    WeightedLine line = linearity.get().line();
    double p = line.p(line.slopeEstimate());
    return format(
            "Bias = %.4f %+.5f x thickness, s %.4f, R2 %.3f: ",
            line.intercept().value(),
            line.slope(),
            Math.sqrt(line.residualVariance()),
            line.rSquared())
        + (p < NOTICED_BELOW
            ? format("it goes with the thickness (p %s); calibrate on two thicknesses.", small(p))
            : format("no sign that it goes with the thickness (p %.2f).", p));
  }

  private static String small(double p) {
    return p < LEAST_SAID ? "< " + LEAST_SAID : format("%.4f", p);
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
