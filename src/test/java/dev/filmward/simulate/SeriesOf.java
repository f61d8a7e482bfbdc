package dev.filmward.simulate;

import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Sample;
import dev.filmward.film.Structure;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** The subgroups of each layer and of the total, by name; the total of a lane needs all layers. */
final class SeriesOf {
  private SeriesOf() {}

  static Map<String, List<double[]>> samples(Structure structure, List<Sample> samples) {
    Map<String, List<double[]>> series = new LinkedHashMap<>();
    for (ReportedLayer layer : structure.reported()) {
      series.put(
          layer.name(), samples.stream().map(sample -> layer(sample, layer.position())).toList());
    }
    series.put("Total", samples.stream().map(SeriesOf::total).toList());
    return series;
  }

  static double[] layer(Sample sample, int position) {
    return IntStream.range(0, sample.laneCount())
        .filter(lane -> sample.isMeasured(position, lane))
        .mapToDouble(lane -> sample.thicknessUm(position, lane))
        .toArray();
  }

  private static double[] total(Sample sample) {
    List<Double> totals = new ArrayList<>();
    for (int i = 0; i < sample.laneCount(); i++) {
      int lane = i;
      if (IntStream.rangeClosed(1, sample.layers()).allMatch(p -> sample.isMeasured(p, lane))) {
        totals.add(
            IntStream.rangeClosed(1, sample.layers())
                .mapToDouble(p -> sample.thicknessUm(p, lane))
                .sum());
      }
    }
    return totals.stream().mapToDouble(Double::doubleValue).toArray();
  }
}
