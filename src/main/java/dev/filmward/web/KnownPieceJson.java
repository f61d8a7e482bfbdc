package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.gauge.calibration.ReferencePiece;
import dev.filmward.gauge.study.BiasVerdict;
import dev.filmward.gauge.study.GaugeVerdict;
import dev.filmward.gauge.study.Linearity;
import dev.filmward.gauge.study.LinearityVerdict;
import dev.filmward.gauge.study.StudyPlan;
import dev.filmward.gauge.study.Tolerance;
import dev.filmward.pipeline.PieceResults;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.StudyStability;
import dev.filmward.pipeline.StudyStability.Dated;
import dev.filmward.stats.WeightedLine;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Known pieces and what studies of them come to as JSON. Stateless. */
final class KnownPieceJson {
  private static final int CALIBRATIONS_LOOKED_AT = 200;
  private static final int BAND_STEPS = 40;
  private static final double BAND_MARGIN = 0.04;

  private KnownPieceJson() {}

  /** Pieces that calibrations and checks know already, those in use before; each one once. */
  static ArrayNode ofGaugeRoom(Plant plant) {
    ArrayNode nodes = Wire.object().putArray("pieces");
    Set<ReferencePiece> seen = new HashSet<>();
    plant
        .gaugeChecks()
        .read()
        .standards()
        .forEach(one -> add(one.standard().film(), "check-standard", seen, nodes));
    plant.gauges().calibrations(CALIBRATIONS_LOOKED_AT).stream()
        .flatMap(calibration -> calibration.pieces().stream())
        .forEach(each -> add(each.piece(), "calibration", seen, nodes));
    return nodes;
  }

  private static void add(
      ReferencePiece piece, String from, Set<ReferencePiece> seen, ArrayNode nodes) {
    if (seen.add(piece)) {
      nodes.add(piece(piece).put("from", from));
    }
  }

  static ObjectNode piece(ReferencePiece piece) {
    return Wire.object()
        .put("name", piece.name())
        .put("thicknessUm", piece.thicknessUm())
        .put("expandedUm", piece.expandedUm())
        .put("k", piece.k())
        .put("material", piece.material())
        .put("howKnown", piece.howKnown());
  }

  /** What the readings amount to; beside the figures that the command gives as well. */
  static ObjectNode judged(PieceResults results, StudyPlan plan) {
    ObjectNode node = Wire.object();
    ArrayNode biases = node.putArray("bias");
    List<ReferencePiece> known = plan.known().orElseThrow().pieces();
    for (var piece : results.pieces()) {
      if (piece.hasSpread()) {
        ReferencePiece reference = known.get(plan.parts().indexOf(piece.name()));
        biases.add(bias(piece, reference.standardUm(), plan));
      }
    }
    node.set("linearity", results.linearity().map(one -> linearity(one, results)).orElse(null));
    node.set("stability", results.stability().map(KnownPieceJson::stability).orElse(null));
    return node;
  }

  private static ObjectNode bias(
      dev.filmward.gauge.study.ReferencePiece piece, double standardUm, StudyPlan plan) {
    var bias = piece.bias();
    ObjectNode node =
        Wire.object()
            .put("part", piece.name())
            .put("verdict", BiasVerdict.of(bias, standardUm).word())
            .put("combinedUm", BiasVerdict.halfWidth(bias, standardUm));
    double mean = piece.referenceUm() + bias.value();
    Optional<Tolerance> tolerance = Tolerance.of(plan.layers().get(0).limits(), mean);
    node.set("repeats", tolerance.map(one -> repeats(one, piece.variance())).orElse(null));
    return node.put("source", BiasVerdict.SOURCE);
  }

  private static ObjectNode repeats(Tolerance tolerance, double variance) {
    double percent = tolerance.percent(variance);
    return Wire.object()
        .put("percentTolerance", percent)
        .put("toleranceUm", tolerance.widthUm())
        .put("words", tolerance.kind().words())
        .put("verdict", GaugeVerdict.of(percent).word())
        .put("source", GaugeVerdict.SOURCE);
  }

  private static ObjectNode linearity(Linearity linearity, PieceResults results) {
    WeightedLine line = linearity.line();
    ObjectNode node =
        Wire.object().put("verdict", LinearityVerdict.of(line, results.pieces()).word());
    double least = extreme(results, -1);
    double most = extreme(results, 1);
    double margin = BAND_MARGIN * (most - least);
    ArrayNode band = node.putArray("band");
    for (int i = 0; i <= BAND_STEPS; i++) {
      double um = least - margin + (most - least + 2 * margin) * i / BAND_STEPS;
      WeightedLine.Estimate there = line.at(um);
      double half = line.halfWidth(there, dev.filmward.gauge.study.ReferencePiece.CONFIDENCE);
      band.addObject()
          .put("referenceUm", um)
          .put("bias", there.value())
          .put("lower", there.value() - half)
          .put("upper", there.value() + half);
    }
    return node.put("source", LinearityVerdict.SOURCE);
  }

  private static double extreme(PieceResults results, int sign) {
    return sign
        * results.pieces().stream()
            .mapToDouble(piece -> sign * piece.referenceUm())
            .max()
            .orElseThrow();
  }

  private static ObjectNode stability(StudyStability stability) {
    ObjectNode node =
        Wire.object()
            .put("basis", stability.perDate() == 1 ? "individuals" : "means")
            .put("verdict", verdict(stability));
    ArrayNode points = node.putArray("points");
    for (int i = 0; i < stability.points().size(); i++) {
      Dated point = stability.points().get(i);
      ObjectNode one = points.addObject().put("date", point.date().toString());
      one.put("mean", point.mean());
      Wire.number(one, "range", stability.spreadAt(i));
    }
    node.set("limits", stability.limits().map(KnownPieceJson::limits).orElse(null));
    return node.put("source", StudyStability.SOURCE);
  }

  private static @Nullable String verdict(StudyStability stability) {
    return stability
        .limits()
        .map(limits -> limits.beyond().isEmpty() ? "stable" : "not-stable")
        .orElse(null);
  }

  private static ObjectNode limits(StudyStability.Limits limits) {
    ObjectNode node = Wire.object();
    node.set("level", Wire.band(limits.level()));
    node.set("spread", Wire.band(limits.spread()));
    ArrayNode beyond = node.putArray("beyond");
    limits.beyond().forEach(beyond::add);
    return node;
  }
}
