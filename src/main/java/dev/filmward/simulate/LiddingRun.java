package dev.filmward.simulate;

import dev.filmward.film.Role;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.simulate.CsvFormat.Numerals;
import dev.filmward.simulate.CsvFormat.Offset;
import dev.filmward.simulate.CsvFormat.Text;
import dev.filmward.simulate.CsvFormat.Times;
import dev.filmward.simulate.ExpectedAlarm.Side;
import dev.filmward.simulate.FilmModel.Stability;
import dev.filmward.simulate.SampleRun.Account;
import dev.filmward.simulate.SampleRun.Recording;
import java.time.Instant;
import java.util.List;
import java.util.Map;

/** Seven layers, one of which thins as the screen pack of its extruder fills up. */
final class LiddingRun {
  /** The first with which chance raises no alarm. */
  private static final long SEED = 28_072;

  private static final int BLINDING_FROM = 50;

  private LiddingRun() {}

  static SampleRun run() {
    FilmModel film = film(structure());
    Story story =
        new Story(
            film,
            SampleRuns.schedule("Blown 1", Instant.parse("2026-11-18T05:00:00Z"), "LID-"),
            SEED,
            List.of(
                new ScreenBlinding(
                    BLINDING_FROM, Reach.extruder(film.structure(), "F"), 0.0012, 130, 40)));
    return new SampleRun("lidding-tie-thinning", story, recording(), account());
  }

  private static Structure structure() {
    return StructureDraft.of(
            "LID-60",
            "Barrier lidding film, 60 um",
            LayerDraft.of("Outer skin", Role.SKIN, "LDPE")
                .individual(12.6, 14, 15.4)
                .average(13.3, 14.7)
                .extruded("A", 0.922),
            LayerDraft.of("Outer tie", Role.TIE, "MAH-g-LLDPE")
                .individual(2.1, 3, 3.9)
                .average(2.55, 3.45)
                .extruded("B", 0.915),
            LayerDraft.of("Outer PA", Role.CORE, "PA6")
                .individual(5.1, 6, 6.9)
                .average(5.7, 6.3)
                .extruded("C", 1.13),
            LayerDraft.of("Barrier", Role.BARRIER, "EVOH 32")
                .atLeast(3.4, 4)
                .averageAtLeast(3.8)
                .extruded("D", 1.18),
            LayerDraft.of("Inner PA", Role.CORE, "PA6")
                .individual(5.1, 6, 6.9)
                .average(5.7, 6.3)
                .extruded("E", 1.13),
            LayerDraft.of("Inner tie", Role.TIE, "MAH-g-LLDPE")
                .individual(2.1, 3, 3.9)
                .average(2.55, 3.45)
                .extruded("F", 0.915),
            LayerDraft.of("Seal", Role.SEAL, "mLLDPE")
                .individual(21.6, 24, 26.4)
                .average(22.8, 25.2)
                .extruded("G", 0.916))
        .reportedEach(SpecLimits.of(55, 60, 65));
  }

  private static FilmModel film(Structure structure) {
    return new FilmModel(
        structure,
        List.of(
            new LayerModel(14.05, 0.022, 0.002, List.of(0.003, -0.002, -0.004, 0.0, 0.003)),
            new LayerModel(3.04, 0.048, 0.003, List.of(-0.008, 0.003, 0.006, 0.004, -0.005)),
            new LayerModel(6.05, 0.026, 0.002, List.of(0.004, 0.0, -0.003, 0.003, -0.004)),
            new LayerModel(4.12, 0.03, 0.002, List.of(-0.004, 0.004, 0.003, -0.005, 0.002)),
            new LayerModel(6.03, 0.026, 0.002, List.of(0.002, -0.004, 0.004, 0.001, -0.003)),
            new LayerModel(3.06, 0.048, 0.003, List.of(0.006, -0.006, -0.002, 0.007, -0.005)),
            new LayerModel(24.1, 0.021, 0.002, List.of(-0.003, 0.002, 0.003, 0.001, -0.003))),
        new Stability(0.01, 0.3, 0),
        100);
  }

  private static Recording recording() {
    return new Recording(
        160,
        new CsvFormat(
            Layout.LONG_BY_NAME,
            new Times(SampleRuns.PLANT_ZONE, Offset.LEFT_OUT),
            new Text(Encoding.UTF_8_MARKED, LineEnd.CRLF, ';'),
            new Numerals("um", 2, ',', "NaN")),
        Map.of());
  }

  private static Account account() {
    return new Account(
        List.of(
            "Blown 1 made the seven-layer barrier lidding film LID-60 of 60 um in 160 samples of 5"
                + " lanes, one each 15 minutes from 18 November 2026, 06:00.",
            "An optical gauge read all seven layers; it wrote one reading a row, with semicolons,"
                + " decimal commas and local times without an offset.",
            "From sample S051 on the screen pack of extruder F filled up, and the inner tie lost"
                + " 0.12 % of its thickness a sample, 13 % by the end.",
            "The inner tie must be seen to thin slowly, long before its specification limit and"
                + " with no other layer or the total in alarm (the seed was chosen so that chance"
                + " raises none)."),
        List.of(
            new ExpectedAlarm(
                List.of("Inner tie"),
                Side.LOW,
                Rolls.sample(BLINDING_FROM),
                Rolls.sample(BLINDING_FROM + 40))));
  }
}
