package dev.filmward.simulate;

import java.util.ArrayList;
import java.util.List;

/** What can be wrong with a row, so that it must be quarantined. */
enum Fault {
  /** The (first) thickness is no number. In the wide layout it costs that reading only. */
  BAD_NUMBER {
    @Override
    void spoil(List<String> fields, Layout layout) {
      int column = layout.isWide() ? LAYER : LAYER + 1;
      fields.set(column, fields.get(column) + "?");
    }
  },
  BAD_LANE {
    @Override
    void spoil(List<String> fields, Layout layout) {
      fields.set(LAYER - 1, "edge");
    }
  },
  /** Only where a row names its layer. */
  UNKNOWN_LAYER {
    @Override
    void spoil(List<String> fields, Layout layout) {
      if (layout.isWide()) {
        throw new IllegalArgumentException("a wide row does not name its layers");
      }
      fields.set(LAYER, "Overlay");
    }
  },
  TOO_FEW_FIELDS {
    @Override
    void spoil(List<String> fields, Layout layout) {
      fields.remove(fields.size() - 1);
    }
  };

  /** Column, from 0, of the layer or of the first layer's thickness; the lane stands before it. */
  private static final int LAYER = 6;

  abstract void spoil(List<String> fields, Layout layout);

  List<String> spoiled(List<String> fields, Layout layout) {
    List<String> copy = new ArrayList<>(fields);
    spoil(copy, layout);
    return copy;
  }

  /** How many of a row's places it costs; they are the first ones. */
  int cost(int places) {
    return this == BAD_NUMBER ? 1 : places;
  }
}
