package dev.filmward.simulate;

import dev.filmward.film.Role;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.simulate.FilmModel.Stability;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/** A small film for tests: four layers, reported as two, in three lanes. */
final class TwoLayers {
  static final Structure STRUCTURE =
      StructureDraft.of(
              "TWO-50",
              "Film for tests",
              LayerDraft.of("Skin", Role.SKIN, "LDPE").individual(9, 10, 11).extruded("A", 0.92),
              LayerDraft.of("Tie", Role.TIE, "MAH-g-LLDPE").atLeast(4, 5).extruded("B", 0.915),
              LayerDraft.of("Core", Role.CORE, "HDPE").individual(20, 25, 30).extruded("C", 0.955),
              LayerDraft.of("Seal", Role.SEAL, "LDPE").individual(9, 10, 11).extruded("A", 0.92))
          .reported(SpecLimits.of(45, 50, 55), List.of(2, 2));

  static final Schedule SCHEDULE =
      new Schedule(
          "Cast 7",
          Instant.parse("2026-11-02T07:00:00Z"),
          Duration.ofMinutes(10),
          new Rolls("R", 4));

  private TwoLayers() {}

  /** Readings to 0.001 um, so that rounding does not hide what is tested. */
  static FilmModel film(Stability stability) {
    return new FilmModel(
        STRUCTURE,
        List.of(
            new LayerModel(15, 0.03, 0.01, List.of(-0.02, 0.0, 0.02)),
            new LayerModel(36, 0.02, 0.005, List.of(0.01, 0.0, -0.01))),
        stability,
        1000);
  }

  static Story story(Event... events) {
    return new Story(film(new Stability(0.01, 0.6, 0)), SCHEDULE, 11, List.of(events));
  }

  /** Nothing varies and nothing is lost: a reading is the mean times lanes times events. */
  static Story still(Event... events) {
    FilmModel film =
        new FilmModel(
            STRUCTURE,
            List.of(
                new LayerModel(15, 0, 0, List.of(0.0, 0.0, 0.0)),
                new LayerModel(36, 0, 0, List.of(0.0, 0.0, 0.0))),
            new Stability(0, 0, 0),
            1000);
    return new Story(film, SCHEDULE, 1, List.of(events));
  }
}
