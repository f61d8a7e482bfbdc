package dev.filmward.intake;

/** How readings are laid out in rows. */
public enum Layout {
  /** One reading a row. */
  LONG,
  /** One lane of a sample a row, with a column for each layer. */
  WIDE
}
