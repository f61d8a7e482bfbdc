package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.gauge.study.Components;
import dev.filmward.gauge.study.CrossedReadings;
import dev.filmward.gauge.study.GaugeStudy;
import dev.filmward.gauge.study.GaugeVerdict;
import dev.filmward.gauge.study.LayerOutcome;
import dev.filmward.gauge.study.Linearity;
import dev.filmward.gauge.study.Linearity.Weighting;
import dev.filmward.gauge.study.ReferencePiece;
import dev.filmward.gauge.study.ReferenceReadings;
import dev.filmward.gauge.study.ShareLimits;
import dev.filmward.gauge.study.StudyAnova;
import dev.filmward.gauge.study.Tolerance;
import dev.filmward.pipeline.CheckStandard;
import dev.filmward.stats.AnovaTable.Part;
import dev.filmward.stats.WeightedLine;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Studies of a gauge as JSON, for the command and the page alike. Stateless. */
public final class GaugeStudyJson {
  private GaugeStudyJson() {}

  /** The layers that could be studied. */
  public static ObjectNode studies(List<LayerOutcome> outcomes) {
    ObjectNode node = Wire.object();
    ArrayNode studies = node.putArray("studies");
    for (LayerOutcome outcome : outcomes) {
      if (outcome instanceof LayerOutcome.Studied studied) {
        studies.add(study(studied.study()));
      }
    }
    return node;
  }

  /** The layers that have pieces of known thickness. */
  public static ArrayNode references(ReferenceReadings readings) {
    ArrayNode layers = Wire.object().putArray("references");
    for (String layer : readings.layers()) {
      List<ReferencePiece> pieces = readings.pieces(layer);
      ObjectNode node = layers.addObject().put("layer", layer);
      ArrayNode biases = node.putArray("bias");
      pieces.forEach(piece -> biases.add(bias(piece)));
      node.set("linearity", linearity(pieces, Weighting.ALIKE));
      node.set("linearityBySpread", linearity(pieces, Weighting.BY_SPREAD));
    }
    return layers;
  }

  /** Without a test where its readings are all alike, or there is one. */
  private static ObjectNode bias(ReferencePiece piece) {
    ObjectNode node =
        Wire.object()
            .put("part", piece.name())
            .put("referenceUm", piece.referenceUm())
            .put("readings", piece.um().size());
    if (piece.hasSpread()) {
      ReferencePiece.Bias bias = piece.bias();
      node.put("bias", bias.value())
          .put("deviation", bias.deviation())
          .put("t", bias.t())
          .put("p", bias.p())
          .put("lower", bias.lower())
          .put("upper", bias.upper());
    }
    node.set("stability", CheckStandard.of(piece).map(GaugeStudyJson::stability).orElse(null));
    return node;
  }

  private static ObjectNode stability(CheckStandard standard) {
    ObjectNode node = Wire.object();
    node.set("value", Wire.band(standard.value()));
    node.set("movingRange", Wire.band(standard.movingRange()));
    ArrayNode beyond = node.putArray("beyond");
    standard.beyond().forEach(beyond::add);
    return node;
  }

  private static @Nullable ObjectNode linearity(List<ReferencePiece> pieces, Weighting weighting) {
    return Linearity.of(pieces, weighting).map(one -> line(one.line())).orElse(null);
  }

  private static ObjectNode line(WeightedLine line) {
    ObjectNode node = Wire.object();
    node.set("slope", estimate(line, line.slopeEstimate()));
    node.set("intercept", estimate(line, line.intercept()));
    return node.put("rSquared", line.rSquared()).put("s", Math.sqrt(line.residualVariance()));
  }

  private static ObjectNode estimate(WeightedLine line, WeightedLine.Estimate estimate) {
    double half = line.halfWidth(estimate, ReferencePiece.CONFIDENCE);
    return Wire.object()
        .put("value", estimate.value())
        .put("lower", estimate.value() - half)
        .put("upper", estimate.value() + half)
        .put("t", estimate.t())
        .put("p", line.p(estimate));
  }

  static ObjectNode study(GaugeStudy study) {
    CrossedReadings readings = study.readings();
    ObjectNode node =
        Wire.object()
            .put("layer", readings.layer())
            .put("parts", readings.parts().size())
            .put("operators", readings.operators().size())
            .put("trials", readings.trials());
    node.set("anova", anova(study.anova()));
    node.put("interactionPooled", study.anova().isPooled());
    ObjectNode variance = components(study.variance(), study);
    variance.set("raw", components(study.raw(), study));
    node.set("variance", variance);
    node.put("percentStudyVariation", study.percentStudyVariation());
    Wire.number(node, "percentTolerance", study.percentTolerance());
    node.put("distinctCategories", study.distinctCategories());
    node.set("tolerance", study.tolerance().map(GaugeStudyJson::tolerance).orElse(null));
    node.set("percent", percent(study));
    node.set("confidence", confidence(study));
    node.set("verdict", verdict(study));
    return node;
  }

  private static ObjectNode anova(StudyAnova anova) {
    ObjectNode node = Wire.object();
    node.set("part", line(anova.part()));
    node.set("operator", anova.operator().map(GaugeStudyJson::line).orElse(null));
    node.set("interaction", anova.interaction().map(GaugeStudyJson::line).orElse(null));
    node.set("repeatability", part(anova.repeatability()));
    if (anova.isPooled()) {
      node.set("pooledError", part(anova.error()));
    }
    node.set(
        "total",
        Wire.object().put("ss", anova.total().sumOfSquares()).put("df", anova.total().degrees()));
    return node;
  }

  private static ObjectNode line(StudyAnova.Line line) {
    return part(line.part()).put("f", line.f()).put("p", line.p());
  }

  private static ObjectNode part(Part part) {
    return Wire.object()
        .put("ss", part.sumOfSquares())
        .put("df", part.degrees())
        .put("ms", part.meanSquare());
  }

  /** Null where operators cannot be told apart, since there was one. */
  private static ObjectNode components(Components components, GaugeStudy study) {
    ObjectNode node = Wire.object().put("repeatability", components.repeatability());
    Wire.number(node, "operator", ofOperators(study, components.operator()));
    Wire.number(node, "interaction", ofOperators(study, components.interaction()));
    Wire.number(node, "reproducibility", ofOperators(study, components.reproducibility()));
    return node.put("gauge", components.gauge())
        .put("part", components.part())
        .put("total", components.total());
  }

  private static OptionalDouble ofOperators(GaugeStudy study, double value) {
    return study.hasReproducibility() ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  /** What each component is of the whole: in variance, in standard deviations, in tolerance. */
  private static ObjectNode percent(GaugeStudy study) {
    ObjectNode node = Wire.object();
    Components shown = study.variance();
    node.set("repeatability", shares(study, OptionalDouble.of(shown.repeatability())));
    node.set("operator", shares(study, ofOperators(study, shown.operator())));
    node.set("interaction", shares(study, ofOperators(study, shown.interaction())));
    node.set("reproducibility", shares(study, ofOperators(study, shown.reproducibility())));
    node.set("gauge", shares(study, OptionalDouble.of(shown.gauge())));
    node.set("part", shares(study, OptionalDouble.of(shown.part())));
    return node;
  }

  private static @Nullable ObjectNode shares(GaugeStudy study, OptionalDouble variance) {
    if (variance.isEmpty()) {
      return null;
    }
    double value = variance.getAsDouble();
    ObjectNode node =
        Wire.object()
            .put("ofVariance", 100 * value / study.variance().total())
            .put("ofStudyVariation", study.percentStudyVariation(value));
    Optional<Double> ofTolerance = study.tolerance().map(known -> known.percent(value));
    return node.put("ofTolerance", ofTolerance.orElse(null));
  }

  private static ObjectNode tolerance(Tolerance tolerance) {
    return Wire.object().put("um", tolerance.widthUm()).put("words", tolerance.kind().words());
  }

  private static ObjectNode confidence(GaugeStudy study) {
    ObjectNode node = Wire.object().put("level", ShareLimits.CONFIDENCE);
    node.putObject("percentStudyVariation")
        .put("lower", study.share().percentLower())
        .put("upper", study.share().percentUpper());
    node.putObject("gauge")
        .put("lower", study.share().gaugeLower())
        .put("upper", study.share().gaugeUpper());
    return node;
  }

  private static ObjectNode verdict(GaugeStudy study) {
    return Wire.object()
        .put("verdict", study.verdict().word())
        .put("forProcess", study.verdictForProcess().word())
        .put("forTolerance", study.verdictForTolerance().map(GaugeVerdict::word).orElse(null))
        .put("categoriesWanted", GaugeVerdict.CATEGORIES_WANTED)
        .put("source", GaugeVerdict.SOURCE);
  }
}
