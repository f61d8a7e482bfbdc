package dev.filmward.intake;

/** Something in a file that a person should know of, although it could be read. */
enum Oddity {
  OTHER_THAN_UTF8,
  LOCAL_TIME,
  TIME_TWICE,
  DECIMAL_POINT,
  DECIMAL_COMMA,
  NO_SAMPLE
}
