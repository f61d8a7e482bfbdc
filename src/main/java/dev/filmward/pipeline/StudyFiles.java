package dev.filmward.pipeline;

import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.gauge.study.ReferenceReadings;
import dev.filmward.gauge.study.StudyPlan;
import dev.filmward.gauge.study.StudyReading;
import dev.filmward.gauge.study.StudyReadings;
import dev.filmward.gauge.study.StudyStep;
import dev.filmward.intake.FileRefused;
import dev.filmward.intake.Rejection;
import dev.filmward.intake.StudyFile;
import dev.filmward.intake.StudyRow;
import dev.filmward.intake.Words;
import dev.filmward.pipeline.StudyDesk.Given;
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
  private static final double SAME_THICKNESS = 1e-9;
  private static final int REJECTIONS_KEPT = 20;
  private static final int FAULTS_SAID = 5;

  private StudyFiles() {}

  /**
   * What a file holds.
   *
   * @param references those of parts whose thickness the file knows
   * @param rejections the first rows that cannot be used
   * @param rejected how many there are
   */
  public record Content(
      StudyReadings readings,
      ReferenceReadings references,
      List<Rejection> rejections,
      long rejected) {
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
    ReferenceReadings references = new ReferenceReadings();
    List<Rejection> rejections = new ArrayList<>();
    long[] rejected = {0};
    new StudyFile(
            fileName,
            row -> {
              readings.add(reading(row));
              row.referenceUm().ifPresent(known -> references.add(reading(row), known));
            },
            rejection -> {
              rejected[0]++;
              if (rejections.size() < REJECTIONS_KEPT) {
                rejections.add(rejection);
              }
            })
        .read(in);
    return new Content(readings, references, rejections, rejected[0]);
  }

  /**
   * The readings of a file for a study that was planned; does not close the stream.
   *
   * @throws FileRefused if its header or a row of it cannot be used
   */
  static List<Given> given(InputStream in, String fileName, StudyPlan plan)
      throws IOException, FileRefused {
    List<Given> given = new ArrayList<>();
    List<String> faults = new ArrayList<>();
    new StudyFile(
            fileName,
            row -> take(row, plan, given, faults),
            rejection -> faults.add(rejection.sentence()))
        .read(in);
    if (!faults.isEmpty()) {
      int said = Math.min(FAULTS_SAID, faults.size());
      String more = faults.size() > said ? "\nand " + (faults.size() - said) + " more" : "";
      throw new FileRefused(String.join("\n", faults.subList(0, said)) + more);
    }
    return given;
  }

  private static void take(StudyRow row, StudyPlan plan, List<Given> given, List<String> faults) {
    if (!row.trial().matches("[1-9][0-9]{0,3}")) {
      faults.add(
          "line "
              + row.line()
              + " (trial): "
              + Words.quoted(row.trial())
              + " is not 1, 2 and so on");
    } else if (isOtherwiseKnown(row, plan)) {
      faults.add(
          "line "
              + row.line()
              + " (reference): "
              + row.referenceUm().orElseThrow()
              + " um is not the thickness that part "
              + Words.quoted(row.part())
              + " was planned with");
    } else if (row.layer().isEmpty() && plan.layers().size() > 1) {
      faults.add("line " + row.line() + ": a study of several layers names the layer");
    } else {
      StudyStep step = new StudyStep(row.part(), row.operator(), Integer.parseInt(row.trial()));
      given.add(new Given(step, row.layer().orElse(ONLY_LAYER), row.um()));
    }
  }

  /** A file may say what its parts are known to measure; a unit converted there and back counts. */
  private static boolean isOtherwiseKnown(StudyRow row, StudyPlan plan) {
    return row.referenceUm().isPresent()
        && plan.known().stream()
            .flatMap(known -> known.pieces().stream())
            .filter(piece -> piece.name().equals(row.part()))
            .anyMatch(
                piece ->
                    Math.abs(piece.thicknessUm() - row.referenceUm().getAsDouble())
                        > SAME_THICKNESS * piece.thicknessUm());
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
