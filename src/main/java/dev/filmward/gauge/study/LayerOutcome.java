package dev.filmward.gauge.study;

import dev.filmward.film.SpecLimits;
import java.util.List;
import java.util.function.Function;

/** What became of one layer: its study, or why there is none. Immutable. */
public sealed interface LayerOutcome {

  String layer();

  record Studied(GaugeStudy study) implements LayerOutcome {
    @Override
    public String layer() {
      return study.readings().layer();
    }
  }

  /**
   * No study.
   *
   * @param reasons what is wrong, where, and what to do instead
   */
  record Refused(String layer, List<String> reasons) implements LayerOutcome {
    public Refused {
      reasons = List.copyOf(reasons);
    }
  }

  /**
   * Studies every layer by itself.
   *
   * @param limits specification of a layer by its name in the readings
   */
  static List<LayerOutcome> of(StudyReadings readings, Function<String, SpecLimits> limits) {
    return readings.layers().stream()
        .map(layer -> of(readings.layout(layer), layer, limits.apply(layer)))
        .toList();
  }

  private static LayerOutcome of(StudyReadings.Layout layout, String layer, SpecLimits limits) {
    if (layout instanceof StudyReadings.Layout.Faulty faulty) {
      return new Refused(layer, faulty.reasons());
    }
    CrossedReadings crossed = ((StudyReadings.Layout.Balanced) layout).readings();
    if (!crossed.differOnRepeating()) {
      return new Refused(
          layer,
          List.of(
              "repeated readings never differ, so they were copied, or rounded more coarsely than"
                  + " the gauge repeats; export them with more digits"));
    }
    return new Studied(GaugeStudy.of(crossed, Tolerance.of(limits, crossed.meanUm())));
  }
}
