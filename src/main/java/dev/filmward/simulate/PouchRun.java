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

/** Five layers, heard as three, all of them thinner while the haul-off runs faster. */
final class PouchRun {
  /** The first with which chance raises no alarm. */
  private static final long SEED = 54;

  private static final int FASTER = 96;
  private static final int SLOWER = 128;

  private PouchRun() {}

  static SampleRun run() {
    FilmModel film = film(structure());
    Reach everywhere = Reach.everywhere(film.structure());
    Story story =
        new Story(
            film,
            SampleRuns.schedule("Blown 1", Instant.parse("2026-11-16T05:00:00Z"), "PCH-"),
            SEED,
            List.of(
                new Step(new Span(FASTER, SLOWER), everywhere, -0.04),
                new LostEcho(Span.from(40), everywhere, 0.006)));
    return new SampleRun("pouch-haul-off-step", story, recording(), account());
  }

  private static Structure structure() {
    return StructureDraft.of(
            "PCH-100",
            "Vacuum pouch film, 100 um",
            LayerDraft.of("Outer PE", Role.SKIN, "LDPE")
                .individual(26.4, 30, 33.6)
                .average(28.5, 31.5)
                .extruded("A", 0.923)
                .heard(1950, 60),
            LayerDraft.of("Outer tie", Role.TIE, "MAH-g-LLDPE")
                .individual(3.5, 5, 6.5)
                .average(4.25, 5.75)
                .extruded("B", 0.915)
                .heard(1980, 15),
            LayerDraft.of("PA core", Role.CORE, "PA6")
                .individual(20.4, 24, 27.6)
                .average(22.8, 25.2)
                .extruded("C", 1.135)
                .heard(2650, 50),
            LayerDraft.of("Inner tie", Role.TIE, "MAH-g-LLDPE")
                .individual(3.5, 5, 6.5)
                .average(4.25, 5.75)
                .extruded("D", 0.915)
                .heard(1980, 15),
            LayerDraft.of("Seal PE", Role.SEAL, "mLLDPE")
                .individual(31.7, 36, 40.3)
                .average(34.2, 37.8)
                .extruded("E", 0.918)
                .heard(2000, 70))
        .reported(SpecLimits.of(90, 100, 110), List.of(2, 1, 2));
  }

  private static FilmModel film(Structure structure) {
    return new FilmModel(
        structure,
        List.of(
            new LayerModel(35.2, 0.021, 0.002, List.of(-0.003, 0.002, 0.004, 0.0, -0.003)),
            new LayerModel(24.3, 0.024, 0.002, List.of(0.004, -0.002, -0.004, 0.001, 0.001)),
            new LayerModel(41.3, 0.021, 0.002, List.of(-0.002, 0.001, 0.003, 0.002, -0.004))),
        new Stability(0.009, 0.3, 0),
        20);
  }

  private static Recording recording() {
    return new Recording(
        144,
        new CsvFormat(
            Layout.WIDE_BY_NAME,
            new Times(SampleRuns.PLANT_ZONE, Offset.WRITTEN),
            new Text(Encoding.UTF_8, LineEnd.LF, ','),
            new Numerals("\u00b5m", 2, '.', "")),
        Map.of());
  }

  private static Account account() {
    return new Account(
        List.of(
            "Blown 1 made the five-layer pouch film PCH-100, PE/tie/PA/tie/PE of 100 um, in 144"
                + " samples of 5 lanes, one each 15 minutes from 16 November 2026, 06:00.",
            "An ultrasonic gauge of 100 MHz read it; PE and tie sound alike, so it reported three"
                + " layers, one column each: PE with tie, PA, tie with PE. A lost echo leaves an empty"
                + " field.",
            "From sample S097 to S128 the haul-off ran about 4 % faster, and every layer was 4 %"
                + " thinner from one sample to the next; then the old speed was set again.",
            "All three layers and the total must be seen to step down together at S097, in one"
                + " alarm; nothing else, since the seed was chosen so that chance raises none."),
        List.of(
            new ExpectedAlarm(
                List.of("Outer PE + Outer tie", "PA core", "Inner tie + Seal PE", "Total"),
                Side.LOW,
                Rolls.sample(FASTER),
                Rolls.sample(FASTER + 3))));
  }
}
