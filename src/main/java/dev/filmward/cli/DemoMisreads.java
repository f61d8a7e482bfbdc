package dev.filmward.cli;

import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.film.Structure;
import dev.filmward.gauge.screen.ScreeningState;
import dev.filmward.pipeline.IncomingFile;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.ScreeningDesk.Suspect;
import dev.filmward.simulate.GaugeFault;
import dev.filmward.store.FileEntry.Sender;
import dev.filmward.store.SampleTable.Stored;
import dev.filmward.store.ScreeningTable.Depth;
import dev.filmward.store.ScreeningTable.Question;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * Invented misread samples of the demonstration: late on, the shrink film is measured a second time
 * beside four of its samples, and each time the gauge gets something else wrong. They are found and
 * stay off the charts; one has been confirmed, the others wait for a person. The same each time.
 */
final class DemoMisreads {
  private static final String LINE = "Blown 2";
  private static final String FILM = "SHR-60";
  private static final int APART = 6;
  private static final long SEED = 1411;

  /** As far as the gauge is set to look in the outer skin, um. */
  private static final double RANGE_END_UM = 40;

  private static final List<GaugeFault> FAULTS =
      List.of(
          GaugeFault.twoWalls(),
          GaugeFault.boundaryMissed(1),
          GaugeFault.couplant(12),
          GaugeFault.reads(1, RANGE_END_UM).inEveryOtherLane());

  private final Plant plant;
  private final Duration interval;

  /**
   * @param interval between two samples as they are shown
   */
  DemoMisreads(Plant plant, Duration interval) {
    this.plant = plant;
    this.interval = interval;
  }

  /** Does nothing where the film is not known, or has too few samples. */
  void load() {
    Optional<Structure> film = plant.structures().find(FILM);
    List<Stored> latest =
        plant
            .store()
            .read(tables -> tables.samples().newest(LINE, FILM, APART * (FAULTS.size() + 1)));
    if (film.isEmpty() || latest.size() < APART * FAULTS.size()) {
      return;
    }
    StringBuilder csv =
        new StringBuilder("taken_at,line,structure,roll,sample,lane,layer,thickness_um\n");
    for (int i = 0; i < FAULTS.size(); i++) {
      Sample measured = latest.get(APART * (i + 1) - 1).sample();
      add(csv, FAULTS.get(i).of(measured, film.get(), SEED + i));
    }
    byte[] bytes = csv.toString().getBytes(StandardCharsets.UTF_8);
    plant.read(
        new IncomingFile("measured-again.csv", "demo", () -> new ByteArrayInputStream(bytes))
            .from(new Sender("demo data", "")));
    confirmTheOldest();
  }

  private void add(StringBuilder csv, Sample read) {
    SampleKey key = read.key();
    for (int position = 1; position <= read.layers(); position++) {
      for (int lane = 0; lane < read.laneCount(); lane++) {
        csv.append(read.takenAt().plus(interval.dividedBy(3)))
            .append(',')
            .append(String.join(",", key.line(), key.structure(), key.roll(), key.sample()))
            .append("-2,")
            .append(read.lane(lane))
            .append(',')
            .append(position)
            .append(',')
            .append(
                read.isMeasured(position, lane)
                    ? String.valueOf(read.thicknessUm(position, lane))
                    : "-")
            .append('\n');
      }
    }
  }

  private void confirmTheOldest() {
    List<Suspect> open =
        plant
            .screening()
            .list(
                new Question(
                    Optional.of(LINE),
                    Optional.of(FILM),
                    Optional.empty(),
                    List.of(ScreeningState.HELD_OUT),
                    Depth.WITHOUT_MERE_GAPS,
                    FAULTS.size()));
    if (open.isEmpty()) {
      return;
    }
    plant
        .screening()
        .decide(
            open.get(open.size() - 1).screened().stored().id(),
            ScreeningState.CONFIRMED,
            new Decision(
                DemoPeople.ENGINEER,
                "the tube was not cut open; measured anew as one wall",
                plant.clock().instant()));
  }
}
