package dev.filmward.intake;

import dev.filmward.film.ReadingSink;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import java.time.Instant;

/** Counts what a parser gives and keeps none of it. */
final class Counted implements ReadingSink {
  long readings;
  long missing;
  long rejections;

  @Override
  public void reading(
      SampleKey key, Instant takenAt, Structure structure, int position, int lane, double um) {
    readings++;
  }

  @Override
  public void missing(SampleKey key, Instant takenAt, Structure structure, int position, int lane) {
    missing++;
  }

  void rejected(Rejection rejection) {
    rejections++;
  }
}
