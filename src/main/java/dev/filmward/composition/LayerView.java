package dev.filmward.composition;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;

/**
 * What is looked at of a film, as linear combinations of the total and of the logarithms of its
 * layers: the total or not, and all ratios among some of the layers. Which ratios are taken does
 * not matter for a distance; these are each layer to the geometric mean of those before it.
 * Immutable.
 *
 * <p>Source: J. J. Egozcue and others, Isometric logratio transformations for compositional data
 * analysis, Mathematical Geology 35 (2003) 279.
 */
final class LayerView implements Serializable {
  private static final long serialVersionUID = 1L;

  private final ArrayList<double[]> rows;

  private LayerView(List<double[]> rows) {
    this.rows = new ArrayList<>(rows);
  }

  /** The total only, of a film with so many layers. */
  static LayerView total(int layers) {
    double[] row = new double[layers + 1];
    row[0] = 1;
    return new LayerView(List.of(row));
  }

  /** The ratios among layers, given by their positions from 1; two or more. */
  static LayerView ratios(List<Integer> positions, int layers) {
    List<double[]> rows = new ArrayList<>();
    for (int k = 1; k < positions.size(); k++) {
      double[] row = new double[layers + 1];
      for (int position : positions.subList(0, k)) {
        row[position] = -1.0 / k;
      }
      row[positions.get(k)] = 1;
      rows.add(row);
    }
    return new LayerView(rows);
  }

  /** One layer against the geometric mean of all others. */
  static LayerView ratioToOthers(int position, int layers) {
    double[] row = new double[layers + 1];
    for (int other = 1; other <= layers; other++) {
      row[other] = other == position ? 1 : -1.0 / (layers - 1);
    }
    return new LayerView(List.of(row));
  }

  LayerView and(LayerView other) {
    List<double[]> both = new ArrayList<>(rows);
    both.addAll(other.rows);
    return new LayerView(both);
  }

  int width() {
    return rows.size();
  }

  double[] of(double[] vector) {
    double[] view = new double[rows.size()];
    for (int i = 0; i < view.length; i++) {
      double[] row = rows.get(i);
      for (int j = 0; j < row.length; j++) {
        view[i] += row[j] * vector[j];
      }
    }
    return view;
  }

  /** Covariances of the view from those of total and logarithms. */
  double[][] of(double[][] covariance) {
    double[][] half = new double[covariance.length][];
    for (int j = 0; j < half.length; j++) {
      half[j] = of(covariance[j]);
    }
    double[][] view = new double[width()][width()];
    for (int i = 0; i < view.length; i++) {
      double[] column = new double[half.length];
      for (int j = 0; j < half.length; j++) {
        column[j] = half[j][i];
      }
      view[i] = of(column);
    }
    return view;
  }
}
