package dev.filmward.pipeline;

import dev.filmward.film.ReportedLayer;
import dev.filmward.film.SpecLimits;
import dev.filmward.film.Structure;
import dev.filmward.gauge.calibration.ReferencePiece;
import dev.filmward.gauge.study.KnownPieces;
import dev.filmward.gauge.study.LayerOutcome;
import dev.filmward.gauge.study.StudyPlan;
import dev.filmward.gauge.study.StudyPlan.PlannedLayer;
import dev.filmward.gauge.study.StudyReading;
import dev.filmward.gauge.study.StudyReadings;
import dev.filmward.gauge.study.StudyStep;
import dev.filmward.intake.FileRefused;
import dev.filmward.intake.Words;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.StoredStudy;
import dev.filmward.store.StoredStudy.Ending;
import dev.filmward.store.StoredStudy.Entry;
import dev.filmward.store.Tables;
import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Where gauge studies are planned, measured and ended. Every change is one transaction with its
 * link of the audit chain. Thread-safe.
 */
public final class StudyDesk {
  private static final int VALUES_TOLD = 24;

  private final Plant plant;

  public StudyDesk(Plant plant) {
    this.plant = plant;
  }

  /**
   * A reading to be entered.
   *
   * @param layer its name, or its position from 1
   */
  public record Given(StudyStep step, String layer, double um) {}

  /** What became of readings that were entered. */
  public record Taken(int fresh, int known, int corrected) {}

  /** Who enters, and why readings that are there already take another value; empty if none do. */
  public record Sender(String by, String why) {}

  /** The place of a reading. */
  public record Cell(StudyStep step, String layer) {}

  /** A study with the readings that hold. */
  public record Look(StoredStudy study, Map<Cell, Entry> entries, int corrections) {
    public Look {
      entries = Map.copyOf(entries);
    }

    public int missing() {
      return study.plan().readings() - entries.size();
    }
  }

  /** The layers of a structure as they are studied, with the limits of single readings. */
  public static List<PlannedLayer> layersOf(Structure structure) {
    return structure.reported().stream().map(StudyDesk::planned).toList();
  }

  private static PlannedLayer planned(ReportedLayer layer) {
    return new PlannedLayer(layer.name(), layer.individual());
  }

  public StoredStudy plan(StudyPlan plan, String by) {
    Instant now = plant.clock().instant();
    return plant
        .store()
        .write(
            tables -> {
              StoredStudy kept = tables.studies().add(plan, by, now);
              tables.audit().add(audited(kept, by, now, planWords(plan)));
              return kept;
            });
  }

  /** Newest first. */
  public List<StoredStudy> newest(int most) {
    return plant.store().read(tables -> tables.studies().newest(most));
  }

  public int filled(long id) {
    return plant.store().read(tables -> tables.studies().filled(id));
  }

  /**
   * A study and its readings.
   *
   * @throws NoSuchElementException if there is no such study
   */
  public Look look(long id) {
    return plant.store().read(tables -> look(tables, find(tables, id)));
  }

  /**
   * Enters readings; one that is there already with the same value changes nothing.
   *
   * @throws IllegalArgumentException if the plan has no such part, operator, trial or layer
   * @throws IllegalStateException if the study has ended, or a reading that is there has another
   *     value and nobody said why
   */
  public Taken enter(long id, List<Given> given, Sender sender) {
    Instant now = plant.clock().instant();
    return plant
        .store()
        .write(
            tables -> {
              StoredStudy study = open(tables, id);
              StudyEntering entering =
                  new StudyEntering(look(tables, study), sender, now.atZone(plant.zone()));
              given.forEach(entering::take);
              tables.studies().add(study, entering.entries());
              if (!entering.entries().isEmpty()) {
                tables.audit().add(audited(study, sender.by(), now, words(entering.entries())));
              }
              return entering.taken();
            });
  }

  /**
   * Enters the readings of a file.
   *
   * @throws FileRefused if its header or a row of it cannot be used; nothing was entered then
   */
  public Taken enterFile(long id, InputStream in, String fileName, Sender sender)
      throws IOException, FileRefused {
    StoredStudy study = plant.store().read(tables -> open(tables, id));
    List<Given> given = StudyFiles.given(in, fileName, study.plan());
    return enter(id, given, sender);
  }

  /**
   * Ends a study: finished with all its readings, or abandoned.
   *
   * @throws IllegalStateException if it has ended before, or is to be finished and readings are
   *     missing
   */
  public StoredStudy end(long id, Ending ending) {
    return plant
        .store()
        .write(
            tables -> {
              Look look = look(tables, open(tables, id));
              if (ending.end() == StoredStudy.End.FINISHED && look.missing() > 0) {
                throw new IllegalStateException(
                    Words.count(look.missing(), "reading")
                        + " of "
                        + look.study().plan().readings()
                        + " are missing; enter them, or give the study up with a reason");
              }
              tables.studies().end(id, ending);
              String words = ending.end().word() + ": " + ending.words();
              tables.audit().add(audited(look.study(), ending.by(), ending.at(), words));
              return find(tables, id);
            });
  }

  /** What each layer's readings come to, and the total of all layers where there are several. */
  public static List<LayerOutcome> outcomes(Look look) {
    StudyPlan plan = look.study().plan();
    StudyReadings readings = new StudyReadings();
    List<String> names = plan.layers().stream().map(PlannedLayer::name).toList();
    Map<String, SpecLimits> limits =
        plan.layers().stream().collect(Collectors.toMap(PlannedLayer::name, PlannedLayer::limits));
    for (String part : plan.parts()) {
      for (String operator : plan.operators()) {
        for (int trial = 1; trial <= plan.trials(); trial++) {
          addAll(readings, look, new StudyStep(part, operator, trial));
        }
      }
    }
    return LayerOutcome.of(
        readings, layer -> names.contains(layer) ? limits.get(layer) : plan.total());
  }

  private static void addAll(StudyReadings readings, Look look, StudyStep step) {
    List<PlannedLayer> layers = look.study().plan().layers();
    double sum = 0;
    int found = 0;
    for (PlannedLayer layer : layers) {
      Entry entry = look.entries().get(new Cell(step, layer.name()));
      if (entry != null) {
        readings.add(reading(step, layer.name(), entry.um()));
        sum += entry.um();
        found++;
      }
    }
    boolean hasTotal = layers.stream().noneMatch(layer -> layer.name().equals(StudyPlan.TOTAL));
    if (hasTotal && found > 1 && found == layers.size()) {
      readings.add(reading(step, StudyPlan.TOTAL, sum));
    }
  }

  private static StudyReading reading(StudyStep step, String layer, double um) {
    return new StudyReading(step.part(), step.operator(), String.valueOf(step.trial()), layer, um);
  }

  public static Look look(Tables tables, StoredStudy study) {
    Map<Cell, Entry> holding = new LinkedHashMap<>();
    int corrections = 0;
    for (Entry entry : tables.studies().entries(study)) {
      Entry before = holding.put(new Cell(entry.step(), entry.layer()), entry);
      corrections += before == null ? 0 : 1;
    }
    return new Look(study, holding, corrections);
  }

  private static StoredStudy find(Tables tables, long id) {
    return tables
        .studies()
        .find(id)
        .orElseThrow(() -> new NoSuchElementException("no gauge study " + id));
  }

  private static StoredStudy open(Tables tables, long id) {
    StoredStudy study = find(tables, id);
    Optional<Ending> ending = study.ending();
    if (ending.isPresent()) {
      throw new IllegalStateException(
          "the study was "
              + ending.get().end().word()
              + " by "
              + ending.get().by()
              + "; plan another one for further readings");
    }
    return study;
  }

  private static AuditEntry audited(StoredStudy study, String by, Instant at, String detail) {
    String subject = "gauge study " + study.id() + ", " + study.plan().gauge();
    return new AuditEntry(at, by, "gauge-study", subject, detail);
  }

  private static String planWords(StudyPlan plan) {
    return "planned: "
        + plan.kind().word()
        + " of "
        + plan.structure()
        + plan.known()
            .map(StudyDesk::pieceWords)
            .orElse(", parts " + String.join(" ", plan.parts()))
        + ", operators "
        + String.join(" ", plan.operators())
        + ", "
        + plan.trials()
        + " trials, seed "
        + plan.seed()
        + "; "
        + plan.purpose();
  }

  private static String pieceWords(KnownPieces known) {
    String pieces =
        known.pieces().stream().map(StudyDesk::pieceWords).collect(Collectors.joining());
    return known.dates().isEmpty()
        ? pieces
        : pieces + ", " + known.dates().size() + " dates from " + known.dates().get(0);
  }

  private static String pieceWords(ReferencePiece piece) {
    return ", piece "
        + piece.name()
        + ": "
        + piece.thicknessUm()
        + " um, U "
        + piece.expandedUm()
        + " (k "
        + piece.k()
        + ")";
  }

  private static String words(List<Entry> entries) {
    List<String> told = new ArrayList<>();
    for (Entry entry : entries.subList(0, Math.min(VALUES_TOLD, entries.size()))) {
      told.add(
          entry.step().part()
              + ", "
              + entry.step().operator()
              + ", trial "
              + entry.step().trial()
              + ", "
              + entry.layer()
              + ": "
              + entry.um()
              + (entry.why().isEmpty() ? "" : " (" + entry.why() + ")"));
    }
    int more = entries.size() - told.size();
    return Words.count(entries.size(), "reading")
        + "\n"
        + String.join("\n", told)
        + (more > 0 ? "\nand " + more + " more" : "");
  }
}
