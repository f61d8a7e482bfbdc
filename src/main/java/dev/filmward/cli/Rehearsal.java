package dev.filmward.cli;

import dev.filmward.film.Layer;
import dev.filmward.film.ReportedLayer;
import dev.filmward.film.Role;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.film.Structures;
import dev.filmward.intake.FileRefused;
import dev.filmward.pipeline.AnalysisScope;
import dev.filmward.pipeline.BatchAnalysis;
import dev.filmward.pipeline.BatchAnalysis.InputFile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Goes through an analysis of four made-up readings in memory, on a thread of its own and for
 * nobody, so that what an analysis needs of the program is loaded while the structures are still
 * being read. Where there is one processor it is left out.
 */
final class Rehearsal {
  private static final String READINGS =
      """
      taken_at,line,structure,roll,sample,lane,layer,thickness_um
      2026-01-05T06:00:00Z,L,S,R,1,1,1,10.1
      2026-01-05T06:00:00Z,L,S,R,1,2,1,10.2
      2026-01-05T06:00:10Z,L,S,R,2,1,1,10.3
      2026-01-05T06:00:10Z,L,S,R,2,2,1,10.5
      """;

  private Rehearsal() {}

  static void start() {
    if (Runtime.getRuntime().availableProcessors() > 1) {
      Thread thread = new Thread(Rehearsal::run, "rehearsal");
      thread.setDaemon(true);
      thread.start();
    }
  }

  private static void run() {
    InputFile file =
        new InputFile(
            "rehearsal",
            () -> new ByteArrayInputStream(READINGS.getBytes(StandardCharsets.US_ASCII)));
    try {
      BatchAnalysis analysis =
          new BatchAnalysis(
              new Structures(List.of(structure())), ZoneOffset.UTC, AnalysisScope.everything());
      new AnalysisJson(ZoneOffset.UTC, new OutputOptions())
          .write(analysis.analyse(List.of(file), rejection -> {}), OutputStream.nullOutputStream());
    } catch (IOException | FileRefused e) {
      throw new IllegalStateException("the readings of the rehearsal are sound", e);
    }
  }

  private static Structure structure() {
    SpecLimits limits = SpecLimits.of(9, 10, 11);
    Layer layer =
        new Layer(
            "A",
            Role.CORE,
            Optional.empty(),
            limits,
            SpecLimits.NONE,
            OptionalDouble.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty());
    ReportedLayer reported =
        new ReportedLayer(1, layer.name(), List.of(layer), limits, SpecLimits.NONE);
    return new Structure(
        "S", "rehearsal", List.of(layer), List.of(reported), SpecLimits.NONE, SpecLimits.NONE);
  }
}
