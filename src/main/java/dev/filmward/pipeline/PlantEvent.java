package dev.filmward.pipeline;

import dev.filmward.film.SampleKey;
import dev.filmward.store.FileEntry;
import java.time.Instant;

/** What happened in the plant, told after it is stored. */
public sealed interface PlantEvent {

  /** A sample is new or changed, and judged. */
  record SampleCame(SampleKey key, Instant takenAt) implements PlantEvent {}

  /** An alarm opened, changed its state, or was dealt with. */
  record AlarmChanged(long id, String line, String state) implements PlantEvent {}

  /** Somebody said what a line is doing. */
  record LineModeSaid(String line, String mode) implements PlantEvent {}

  /** Somebody decided about limits, or which tests raise alarms. */
  record LimitsFrozen(String line, String structure) implements PlantEvent {}

  /** A file was read or refused. */
  record FileCame(FileEntry entry) implements PlantEvent {
    public long id() {
      return entry.id();
    }

    public String name() {
      return entry.name();
    }
  }

  /**
   * So many samples are new or changed, kept and judged, all in one transaction.
   *
   * @param receivedAt when their file came
   * @param judgedAt when all was kept
   */
  record SamplesJudged(int samples, Instant receivedAt, Instant judgedAt) implements PlantEvent {}
}
