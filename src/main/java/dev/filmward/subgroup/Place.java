package dev.filmward.subgroup;

/** What became of a reading that was put into a draft. */
public enum Place {
  /** The place was empty and has this value now. */
  FILLED,
  /** The place had this very value. */
  SAME,
  /** The place has another value, which stays; nothing was changed. */
  TAKEN
}
