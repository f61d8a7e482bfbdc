package dev.filmward.simulate;

import dev.filmward.film.Role;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.simulate.CsvFormat.Numerals;
import dev.filmward.simulate.CsvFormat.Offset;
import dev.filmward.simulate.CsvFormat.Text;
import dev.filmward.simulate.CsvFormat.Times;
import dev.filmward.simulate.FilmModel.Stability;
import dev.filmward.simulate.SampleRun.Account;
import dev.filmward.simulate.SampleRun.Recording;
import java.time.Instant;
import java.util.List;
import java.util.Map;

/** Three layers that stay in control, in a file with bad rows and missing readings. */
final class ShrinkRun {
  /** The first with which chance raises no alarm. */
  private static final long SEED = 71;

  private ShrinkRun() {}

  static SampleRun run() {
    FilmModel film = film(structure());
    Story story =
        new Story(
            film,
            SampleRuns.schedule("Blown 2", Instant.parse("2026-11-18T05:00:00Z"), "SHR-"),
            SEED,
            List.of(new LostEcho(Span.from(40), Reach.layer(film.structure(), "Core"), 0.02)));
    return new SampleRun("shrink-in-control", story, recording(), account());
  }

  private static Structure structure() {
    return StructureDraft.of(
            "SHR-60",
            "Collation shrink film, 60 um",
            LayerDraft.of("Outer skin", Role.SKIN, "LDPE")
                .individual(16.2, 18, 19.8)
                .average(17.1, 18.9)
                .extruded("A", 0.923)
                .heard(1950, 40),
            LayerDraft.of("Core", Role.CORE, "HDPE")
                .individual(21.6, 24, 26.4)
                .average(22.8, 25.2)
                .extruded("B", 0.955)
                .heard(2430, 55),
            LayerDraft.of("Inner skin", Role.SEAL, "LDPE")
                .individual(16.2, 18, 19.8)
                .average(17.1, 18.9)
                .extruded("C", 0.923)
                .heard(1950, 40))
        .reportedEach(SpecLimits.of(55.2, 60, 64.8));
  }

  private static FilmModel film(Structure structure) {
    return new FilmModel(
        structure,
        List.of(
            new LayerModel(18.1, 0.02, 0.002, List.of(0.002, -0.003, 0.001, 0.003, -0.003)),
            new LayerModel(24.1, 0.018, 0.0015, List.of(-0.003, 0.001, 0.003, 0.002, -0.003)),
            new LayerModel(18.05, 0.02, 0.002, List.of(0.003, 0.001, -0.004, 0.001, -0.001))),
        new Stability(0.008, 0.3, 0),
        20);
  }

  private static Recording recording() {
    return new Recording(
        160,
        new CsvFormat(
            Layout.LONG_BY_NAME,
            new Times(SampleRuns.PLANT_ZONE, Offset.LEFT_OUT),
            new Text(Encoding.UTF_8, LineEnd.LF, ','),
            new Numerals("um", 2, '.', "-")),
        Map.of(
            488, Fault.BAD_NUMBER,
            777, Fault.BAD_LANE,
            1043, Fault.UNKNOWN_LAYER,
            1366, Fault.TOO_FEW_FIELDS,
            1921, Fault.BAD_NUMBER,
            2202, Fault.TOO_FEW_FIELDS));
  }

  private static Account account() {
    return new Account(
        List.of(
            "Blown 2 made the three-layer shrink film SHR-60 of 60 um in 160 samples of 5 lanes,"
                + " one each 15 minutes from 18 November 2026, 06:00, and nothing went wrong.",
            "An ultrasonic gauge of 100 MHz read its three layers; it wrote one reading a row, with"
                + " commas and local times without an offset.",
            "From sample S041 on it now and then lost the echo of the core and wrote a dash, and"
                + " six rows of the file are damaged.",
            "No alarm must be seen (the seed was chosen so that chance raises none), and each"
                + " damaged row with its reason, kept out of the charts."),
        List.of());
  }
}
