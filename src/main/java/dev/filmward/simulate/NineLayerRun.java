package dev.filmward.simulate;

import dev.filmward.film.ReportedLayer;
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
import java.util.stream.Stream;

/** Nine layers, all of them thin in one lane once a die bolt no longer holds. */
final class NineLayerRun {
  /** The first with which chance raises no alarm. */
  private static final long SEED = 54_233;

  private static final int LANE_OFF_FROM = 80;

  private NineLayerRun() {}

  static SampleRun run() {
    FilmModel film = film(structure());
    Reach everywhere = Reach.everywhere(film.structure());
    Story story =
        new Story(
            film,
            SampleRuns.schedule("Blown 2", Instant.parse("2026-11-16T05:00:00Z"), "HBF-"),
            SEED,
            List.of(
                new LaneOff(Span.from(LANE_OFF_FROM), everywhere, 4, -0.05, 0)
                    .keepingTheMean(film.laneCount())));
    return new SampleRun("nine-layer-lane-off", story, recording(), account(film.structure()));
  }

  private static Structure structure() {
    return StructureDraft.of(
            "HBF-80",
            "High barrier film, 80 um",
            LayerDraft.of("Outer skin", Role.SKIN, "LLDPE")
                .individual(10.8, 12, 13.2)
                .average(11.4, 12.6)
                .extruded("A", 0.918),
            LayerDraft.of("Outer core", Role.CORE, "LDPE")
                .individual(9, 10, 11)
                .average(9.5, 10.5)
                .extruded("B", 0.923),
            LayerDraft.of("Outer tie", Role.TIE, "MAH-g-LLDPE")
                .individual(3, 4, 5)
                .extruded("C", 0.915),
            LayerDraft.of("Outer PA", Role.BARRIER, "PA6-66")
                .individual(6.8, 8, 9.2)
                .average(7.6, 8.4)
                .extruded("D", 1.125),
            LayerDraft.of("Barrier", Role.BARRIER, "EVOH 38")
                .atLeast(3.4, 4)
                .averageAtLeast(3.8)
                .extruded("E", 1.17),
            LayerDraft.of("Inner PA", Role.BARRIER, "PA6-66")
                .individual(6.8, 8, 9.2)
                .average(7.6, 8.4)
                .extruded("F", 1.125),
            LayerDraft.of("Inner tie", Role.TIE, "MAH-g-LLDPE")
                .individual(3, 4, 5)
                .extruded("G", 0.915),
            LayerDraft.of("Inner core", Role.CORE, "LDPE")
                .individual(9, 10, 11)
                .average(9.5, 10.5)
                .extruded("H", 0.923),
            LayerDraft.of("Seal", Role.SEAL, "mLLDPE")
                .individual(18, 20, 22)
                .average(19, 21)
                .extruded("I", 0.912))
        .reportedEach(SpecLimits.of(74, 80, 86));
  }

  private static FilmModel film(Structure structure) {
    return new FilmModel(
        structure,
        List.of(
            new LayerModel(12.06, 0.013, 0.001, List.of(0.002, -0.001, -0.002, 0.0, 0.001)),
            new LayerModel(10.02, 0.013, 0.001, List.of(-0.002, 0.002, 0.001, 0.0, -0.001)),
            new LayerModel(4.05, 0.019, 0.001, List.of(0.003, 0.001, -0.004, 0.002, -0.002)),
            new LayerModel(8.03, 0.014, 0.001, List.of(-0.002, -0.001, 0.003, 0.001, -0.001)),
            new LayerModel(4.1, 0.016, 0.001, List.of(0.001, -0.003, 0.002, 0.002, -0.002)),
            new LayerModel(8.04, 0.014, 0.001, List.of(0.002, 0.001, -0.002, -0.002, 0.001)),
            new LayerModel(4.06, 0.019, 0.001, List.of(-0.003, 0.002, 0.003, -0.001, -0.001)),
            new LayerModel(10.04, 0.013, 0.001, List.of(0.001, 0.001, -0.002, 0.002, -0.002)),
            new LayerModel(20.1, 0.012, 0.001, List.of(-0.001, 0.001, 0.002, -0.001, -0.001))),
        new Stability(0.006, 0.3, 0),
        200);
  }

  private static Recording recording() {
    return new Recording(
        150,
        new CsvFormat(
            Layout.WIDE_BY_POSITION,
            new Times(SampleRuns.PLANT_ZONE, Offset.WRITTEN),
            new Text(Encoding.UTF_8, LineEnd.CRLF, ','),
            new Numerals("mil", 5, '.', "NaN")),
        Map.of());
  }

  private static Account account(Structure structure) {
    return new Account(
        List.of(
            "Blown 2 made the nine-layer high barrier film HBF-80 of 80 um in 150 samples of 5"
                + " lanes, one each 15 minutes from 16 November 2026, 06:00.",
            "An optical gauge read all nine layers; it wrote mil with five decimals, one column a"
                + " layer, named by position.",
            "From sample S081 on a die bolt let go: lane 4 became 5 % thinner in every layer and,"
                + " at the same output, the other lanes 1.25 % thicker.",
            "The ranges of all layers and of the total must be seen to grow while no mean moves;"
                + " nothing before (the seed was chosen so that chance raises none)."),
        List.of(
            new ExpectedAlarm(
                Stream.concat(
                        structure.reported().stream().map(ReportedLayer::name), Stream.of("Total"))
                    .toList(),
                Side.SPREAD,
                Rolls.sample(LANE_OFF_FROM),
                Rolls.sample(LANE_OFF_FROM + 30))));
  }
}
