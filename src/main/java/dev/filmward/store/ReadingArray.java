package dev.filmward.store;

import dev.filmward.film.Sample;

/** Numbers as a JSON array, with {@code null} for what was not measured. Round trips exactly. */
final class ReadingArray {
  private ReadingArray() {}

  static String ofLanes(Sample sample) {
    StringBuilder json = new StringBuilder("[");
    for (int lane = 0; lane < sample.laneCount(); lane++) {
      json.append(lane == 0 ? "" : ",").append(sample.lane(lane));
    }
    return json.append(']').toString();
  }

  static String ofLayer(Sample sample, int position) {
    StringBuilder json = new StringBuilder("[");
    for (int lane = 0; lane < sample.laneCount(); lane++) {
      json.append(lane == 0 ? "" : ",");
      if (sample.isMeasured(position, lane)) {
        json.append(sample.thicknessUm(position, lane));
      } else {
        json.append("null");
      }
    }
    return json.append(']').toString();
  }

  static int[] lanes(String json) {
    String[] cells = cells(json);
    int[] lanes = new int[cells.length];
    for (int i = 0; i < cells.length; i++) {
      lanes[i] = Integer.parseInt(cells[i]);
    }
    return lanes;
  }

  static double[] readings(String json) {
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
