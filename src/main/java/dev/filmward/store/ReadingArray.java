package dev.filmward.store;

import dev.filmward.film.Sample;
import java.util.ArrayList;
import java.util.List;

/** Numbers as a JSON array, with {@code null} for what was not measured. Round trips exactly. */
final class ReadingArray {
  /** An array without a number in it. */
  static final String NOTHING = "[]";

  private static final long MOST_THOUSANDTHS = 1_000_000_000;

  private ReadingArray() {}

  static String ofLanes(Sample sample) {
    StringBuilder json = new StringBuilder("[");
    for (int lane = 0; lane < sample.laneCount(); lane++) {
      json.append(lane == 0 ? "" : ",").append(sample.lane(lane));
    }
    return json.append(']').toString();
  }

  /** Degrees of the film by lane; nothing where it was measured at none. */
  static String ofCelsius(Sample sample) {
    if (!sample.hasTemperature()) {
      return NOTHING;
    }
    StringBuilder json = new StringBuilder("[");
    for (int lane = 0; lane < sample.laneCount(); lane++) {
      json.append(lane == 0 ? "" : ",");
      sample
          .celsius(lane)
          .ifPresentOrElse(degrees -> append(json, degrees), () -> json.append("null"));
    }
    return json.append(']').toString();
  }

  /** What {@link #ofCelsius} wrote. */
  static double[] celsius(String json) {
    return layer(json);
  }

  /** An array of arrays: for each layer in order, its readings in the order of lanes. */
  static String ofReadings(Sample sample) {
    StringBuilder json = new StringBuilder(8 * sample.layers() * (sample.laneCount() + 1));
    for (int position = 1; position <= sample.layers(); position++) {
      json.append(position == 1 ? "[[" : ",[");
      for (int lane = 0; lane < sample.laneCount(); lane++) {
        if (lane > 0) {
          json.append(',');
        }
        if (sample.isMeasured(position, lane)) {
          append(json, sample.thicknessUm(position, lane));
        } else {
          json.append("null");
        }
      }
      json.append(']');
    }
    return json.append(']').toString();
  }

  /**
   * The shortest text that gives the number back. What has three decimals at most, as nearly all
   * that gauges write, is written without the search for that: a quotient of two exact numbers and
   * the text of it are rounded to the same double.
   */
  private static void append(StringBuilder json, double um) {
    long thousandths = Math.round(um * 1000);
    if (thousandths <= 0 || thousandths > MOST_THOUSANDTHS || thousandths / 1000.0 != um) {
      json.append(um);
      return;
    }
    json.append(thousandths / 1000).append('.');
    int rest = (int) (thousandths % 1000);
    json.append((char) ('0' + rest / 100));
    if (rest % 100 > 0) {
      json.append((char) ('0' + rest / 10 % 10));
      if (rest % 10 > 0) {
        json.append((char) ('0' + rest % 10));
      }
    }
  }

  static int[] lanes(String json) {
    String[] cells = cells(json);
    int[] lanes = new int[cells.length];
    for (int i = 0; i < cells.length; i++) {
      lanes[i] = Integer.parseInt(cells[i]);
    }
    return lanes;
  }

  static double[][] readings(String json) {
    List<double[]> layers = new ArrayList<>();
    for (int at = json.indexOf('[', 1); at > 0; at = json.indexOf('[', at + 1)) {
      layers.add(layer(json.substring(at, json.indexOf(']', at) + 1)));
    }
    return layers.toArray(double[][]::new);
  }

  /** How many of the readings were measured. */
  static int measured(String json) {
    int measured = 0;
    for (double[] layer : readings(json)) {
      for (double um : layer) {
        measured += Double.isNaN(um) ? 0 : 1;
      }
    }
    return measured;
  }

  private static double[] layer(String json) {
    String[] cells = cells(json);
    double[] um = new double[cells.length];
    for (int i = 0; i < cells.length; i++) {
      um[i] = "null".equals(cells[i]) ? Double.NaN : Double.parseDouble(cells[i]);
    }
    return um;
  }

  private static String[] cells(String json) {
    String inner = json.substring(1, json.length() - 1);
    return inner.isEmpty() ? new String[0] : inner.split(",", -1);
  }
}
