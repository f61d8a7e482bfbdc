package dev.filmward.pipeline;

import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.gauge.study.StudyReading;
import dev.filmward.gauge.study.StudyReadings;
import dev.filmward.intake.FileRefused;
import dev.filmward.intake.Rejection;
import dev.filmward.intake.StudyFile;
import dev.filmward.intake.StudyRow;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Files of gauge studies, and what a structure says of the layers in them. Stateless. */
public final class StudyFiles {
  /** What the only layer of a file without layers is called. */
  public static final String ONLY_LAYER = "1";

  private static final String TOTAL = "total";
  private static final int REJECTIONS_KEPT = 20;

  private StudyFiles() {}

  /**
   * What a file holds.
   *
   * @param rejections the first rows that cannot be used
   * @param rejected how many there are
   */
  public record Content(StudyReadings readings, List<Rejection> rejections, long rejected) {
    public Content {
      rejections = List.copyOf(rejections);
    }
  }

  /**
   * Reads the whole stream; does not close it.
   *
   * @throws FileRefused if the header cannot be used
   */
  public static Content read(InputStream in, String fileName) throws IOException, FileRefused {
    StudyReadings readings = new StudyReadings();
    List<Rejection> rejections = new ArrayList<>();
    long[] rejected = {0};
    new StudyFile(
            fileName,
            row -> readings.add(reading(row)),
            rejection -> {
              rejected[0]++;
              if (rejections.size() < REJECTIONS_KEPT) {
                rejections.add(rejection);
              }
            })
        .read(in);
    return new Content(readings, rejections, rejected[0]);
  }

  private static StudyReading reading(StudyRow row) {
    return new StudyReading(
        row.part(), row.operator(), row.trial(), row.layer().orElse(ONLY_LAYER), row.um());
  }

  /** Individual limits of a layer by its name or position, or of the {@code total}, if known. */
  public static Optional<SpecLimits> limits(Structure structure, String layer) {
    return structure
        .layerNamed(layer)
        .or(
            () ->
                structure.reported().stream()
                    .filter(one -> String.valueOf(one.position()).equals(layer))
                    .findFirst())
        .map(one -> one.individual())
        .or(
            () ->
                layer.equalsIgnoreCase(TOTAL) ? Optional.of(structure.total()) : Optional.empty());
  }
}
