package dev.filmward.gauge.echo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Whether the greatest thickness that a gauge is set to expect of a reported layer is sensible: a
 * little above what it is meant to be and not too much. Below nominal and tolerance good film is
 * cut off; far above it a later echo may be taken for the end of the layer. Practice sets 3 mil for
 * layers of 1.5 to 2 mil, 1.5 to 2 times nominal (common practice, no source). Of a group the sum
 * of its layers counts, where all of them have one. Stateless.
 */
final class GreatestCheck {
  /** Times nominal from which it is too much (common practice, no source). */
  static final double TOO_MUCH = 2.5;

  private static final double PRACTICE_LOW = 1.5;
  private static final double PRACTICE_HIGH = 2;

  private GreatestCheck() {}

  static List<Remark> of(List<ExpectedLayer> layers) {
    List<Remark> remarks = new ArrayList<>();
    List<String> unset = new ArrayList<>();
    for (ExpectedLayer layer : layers) {
      OptionalDouble greatest = layer.gauged().greatestUm();
      if (layer.nominalUm().isPresent() && greatest.isPresent()) {
        judged(layer, layer.nominalUm().getAsDouble(), greatest.getAsDouble())
            .ifPresent(remarks::add);
      } else if (layer.nominalUm().isPresent()) {
        unset.add(layer.layer().name() + " " + span(layer.nominalUm().getAsDouble()));
      }
    }
    if (!unset.isEmpty()) {
      remarks.add(Remark.note(Remark.GAUGE, "%s", words(unset)));
    }
    return remarks;
  }

  private static String words(List<String> unset) {
    return "the structure does not say which greatest expected thickness is set. Practice sets 3 mil"
        + " for layers of 1.5 to 2 mil, 1.5 to 2 times nominal ("
        + TradeThickness.PRACTICE
        + "); as much would be: "
        + String.join(", ", unset)
        + ".";
  }

  private static String span(double nominal) {
    return TradeThickness.isOfPractice(nominal)
        ? "3 mil"
        : String.format(
            Locale.ROOT, "%.0f to %.0f um", PRACTICE_LOW * nominal, PRACTICE_HIGH * nominal);
  }

  private static Optional<Remark> judged(ExpectedLayer layer, double nominal, double greatest) {
    String name = layer.layer().name();
    double needed = Math.max(nominal, layer.layer().individual().upper().orElse(nominal));
    if (greatest < needed) {
      return Optional.of(
          Remark.wrong(
              name,
              "the greatest expected thickness, %.1f um, is below nominal and tolerance, %.1f um: good"
                  + " film is cut off. %s",
              greatest,
              needed,
              usual(nominal)));
    }
    if (greatest > TOO_MUCH * nominal) {
      return Optional.of(
          Remark.look(
              name,
              "the greatest expected thickness, %.1f um, is %.1f times nominal: a later echo may be"
                  + " taken for its end. %s",
              greatest,
              greatest / nominal,
              usual(nominal)));
    }
    return Optional.empty();
  }

  private static String usual(double nominal) {
    String words =
        TradeThickness.isOfPractice(nominal)
            ? String.format(
                Locale.ROOT,
                "Set it to 3 mil (%d um) for a layer of 1.5 to 2 mil",
                TradeThickness.spokenUm(TradeThickness.GREATEST.micrometres()))
            : "As 3 mil is for layers of 1.5 to 2 mil, it would be " + span(nominal);
    return words + " (" + TradeThickness.PRACTICE + ").";
  }
}
