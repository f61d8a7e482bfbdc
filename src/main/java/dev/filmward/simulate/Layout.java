package dev.filmward.simulate;

/** One reading a row or one column a layer, and how a layer is called. */
enum Layout {
  LONG_BY_NAME,
  LONG_BY_POSITION,
  WIDE_BY_NAME,
  WIDE_BY_POSITION;

  boolean isWide() {
    return this == WIDE_BY_NAME || this == WIDE_BY_POSITION;
  }

  boolean isByName() {
    return this == LONG_BY_NAME || this == WIDE_BY_NAME;
  }
}
