package dev.filmward.store;

import dev.filmward.film.SpecLimits;
import dev.filmward.gauge.study.KnownPieces;
import dev.filmward.gauge.study.StudyKind;
import dev.filmward.gauge.study.StudyPlan;
import dev.filmward.gauge.study.StudyPlan.PlannedLayer;
import dev.filmward.gauge.study.StudyStep;
import dev.filmward.store.StoredStudy.End;
import dev.filmward.store.StoredStudy.Ending;
import dev.filmward.store.StoredStudy.Entry;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;
import org.jdbi.v3.core.statement.Query;
import org.jspecify.annotations.Nullable;

/** Gauge studies and their readings. Readings are added and never changed; the newest holds. */
public final class StudyTable {
  private static final String PART = "part";
  private static final String OPERATOR = "operator";
  private static final String LAYER = "layer";
  private static final String TOTAL = "total";
  private static final String DATE = "date";

  private final Handle handle;

  StudyTable(Handle handle) {
    this.handle = handle;
  }

  /** Keeps a plan, and gives it a number. */
  public StoredStudy add(StudyPlan plan, String by, Instant at) {
    long id =
        handle
            .createUpdate(
                "INSERT INTO gauge_study (kind, gauge, structure, purpose, trials, seed,"
                    + " planned_by, planned_at) VALUES (:kind, :gauge, :structure, :purpose,"
                    + " :trials, :seed, :by, :at)")
            .bind("kind", plan.kind().word())
            .bind("gauge", Nul.shown(plan.gauge()))
            .bind("structure", Nul.shown(plan.structure()))
            .bind("purpose", Nul.shown(plan.purpose()))
            .bind("trials", plan.trials())
            .bind("seed", plan.seed())
            .bind("by", Nul.shown(by))
            .bind("at", Times.toMicros(at))
            .executeAndReturnGeneratedKeys("id")
            .mapTo(Long.class)
            .one();
    addNames(id, PART, plan.parts().stream().map(StudyTable::unlimited).toList());
    addNames(id, OPERATOR, plan.operators().stream().map(StudyTable::unlimited).toList());
    addNames(id, LAYER, plan.layers());
    addNames(id, TOTAL, List.of(new PlannedLayer(StudyPlan.TOTAL, plan.total())));
    plan.known().ifPresent(known -> addKnown(id, known));
    return find(id).orElseThrow();
  }

  public Optional<StoredStudy> find(long id) {
    return list(handle.createQuery("SELECT * FROM gauge_study WHERE id = :id").bind("id", id))
        .stream()
        .findFirst();
  }

  /** Newest first. */
  public List<StoredStudy> newest(int most) {
    return list(
        handle
            .createQuery("SELECT * FROM gauge_study ORDER BY id DESC LIMIT :most")
            .bind("most", most));
  }

  /** Ends a study that is open; the first word stands. */
  public void end(long id, Ending ending) {
    handle
        .createUpdate(
            "UPDATE gauge_study SET ending = :ending, ended_by = :by, ended_at = :at, conclusion ="
                + " :words WHERE id = :id AND ending IS NULL")
        .bind("id", id)
        .bind("ending", ending.end().word())
        .bind("by", Nul.shown(ending.by()))
        .bind("at", Times.toMicros(ending.at()))
        .bind("words", Nul.shown(ending.words()))
        .execute();
  }

  /** All readings ever entered, oldest first. */
  public List<Entry> entries(StoredStudy study) {
    return handle
        .createQuery("SELECT * FROM gauge_study_reading WHERE study_id = :id ORDER BY id")
        .bind("id", study.id())
        .map((row, context) -> entry(row, study.plan()))
        .list();
  }

  /** How many places have a reading. */
  public int filled(long id) {
    return handle
        .createQuery(
            "SELECT count(*) FROM (SELECT DISTINCT layer_place, part_place, operator_place, trial"
                + " FROM gauge_study_reading WHERE study_id = :id) AS filled")
        .bind("id", id)
        .mapTo(Integer.class)
        .one();
  }

  /** Names are of the plan. */
  public void add(StoredStudy study, List<Entry> entries) {
    List<String> layers = study.plan().layers().stream().map(PlannedLayer::name).toList();
    PreparedBatch batch =
        handle.prepareBatch(
            "INSERT INTO gauge_study_reading (study_id, layer_place, part_place, operator_place,"
                + " trial, um, entered_by, entered_at, why) VALUES (:study, :layer, :part,"
                + " :operator, :trial, :um, :by, :at, :why)");
    for (Entry entry : entries) {
      batch
          .bind("study", study.id())
          .bind("layer", layers.indexOf(entry.layer()))
          .bind("part", study.plan().parts().indexOf(entry.step().part()))
          .bind("operator", study.plan().operators().indexOf(entry.step().operator()))
          .bind("trial", entry.step().trial())
          .bind("um", entry.um())
          .bind("by", Nul.shown(entry.by()))
          .bind("at", Times.toMicros(entry.at()))
          .bind("why", Nul.shown(entry.why()))
          .add();
    }
    if (!entries.isEmpty()) {
      batch.execute();
    }
  }

  private static Entry entry(ResultSet row, StudyPlan plan) throws SQLException {
    StudyStep step =
        new StudyStep(
            plan.parts().get(row.getInt("part_place")),
            plan.operators().get(row.getInt("operator_place")),
            row.getInt("trial"));
    return new Entry(
        step,
        plan.layers().get(row.getInt("layer_place")).name(),
        row.getDouble("um"),
        row.getString("entered_by"),
        Times.toInstant(row.getLong("entered_at")),
        row.getString("why"));
  }

  private static PlannedLayer unlimited(String name) {
    return new PlannedLayer(name, SpecLimits.NONE);
  }

  private void addKnown(long id, KnownPieces known) {
    addNames(id, DATE, known.dates().stream().map(date -> unlimited(date.toString())).toList());
    new StudyPieceTable(handle).add(id, known.pieces());
  }

  private Optional<KnownPieces> known(Head head, List<String> parts) {
    if (head.kind == StudyKind.CROSSED) {
      return Optional.empty();
    }
    return Optional.of(
        new KnownPieces(
            head.kind,
            new StudyPieceTable(handle).pieces(head.id, parts),
            names(head.id, DATE).stream().map(one -> LocalDate.parse(one.name())).toList()));
  }

  private void addNames(long id, String kind, List<PlannedLayer> names) {
    for (int place = 0; place < names.size(); place++) {
      SpecLimits limits = names.get(place).limits();
      handle
          .createUpdate(
              "INSERT INTO gauge_study_name (study_id, kind, place, name, lower_um, upper_um)"
                  + " VALUES (:study, :kind, :place, :name, :lower, :upper)")
          .bind("study", id)
          .bind("kind", kind)
          .bind("place", place)
          .bind("name", Nul.shown(names.get(place).name()))
          .bind("lower", boxed(limits.lower()))
          .bind("upper", boxed(limits.upper()))
          .execute();
    }
  }

  private static @Nullable Double boxed(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() : null;
  }

  private List<PlannedLayer> names(long id, String kind) {
    return handle
        .createQuery(
            "SELECT * FROM gauge_study_name WHERE study_id = :id AND kind = :kind ORDER BY place")
        .bind("id", id)
        .bind("kind", kind)
        .map(
            (row, context) ->
                new PlannedLayer(
                    row.getString("name"),
                    new SpecLimits(
                        number(row, "lower_um"), OptionalDouble.empty(), number(row, "upper_um"))))
        .list();
  }

  private static OptionalDouble number(ResultSet row, String column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  private List<StoredStudy> list(Query query) {
    List<Head> heads = query.map((row, context) -> head(row)).list();
    List<StoredStudy> studies = new ArrayList<>();
    heads.forEach(head -> studies.add(study(head)));
    return studies;
  }

  private StoredStudy study(Head head) {
    List<String> parts = names(head.id, PART).stream().map(PlannedLayer::name).toList();
    StudyPlan plan =
        new StudyPlan(
            head.gauge,
            head.structure,
            head.purpose,
            names(head.id, LAYER),
            names(head.id, TOTAL).get(0).limits(),
            parts,
            names(head.id, OPERATOR).stream().map(PlannedLayer::name).toList(),
            head.trials,
            head.seed,
            known(head, parts));
    return new StoredStudy(head.id, plan, head.by, head.at, head.ending);
  }

  private static Head head(ResultSet row) throws SQLException {
    String ending = row.getString("ending");
    return new Head(
        row.getLong("id"),
        StudyKind.fromWord(row.getString("kind")),
        row.getString("gauge"),
        row.getString("structure"),
        row.getString("purpose"),
        row.getInt("trials"),
        row.getLong("seed"),
        row.getString("planned_by"),
        Times.toInstant(row.getLong("planned_at")),
        ending == null
            ? Optional.empty()
            : Optional.of(
                new Ending(
                    ending.equals(End.FINISHED.word()) ? End.FINISHED : End.ABANDONED,
                    row.getString("ended_by"),
                    Times.toInstant(row.getLong("ended_at")),
                    row.getString("conclusion"))));
  }

  private record Head(
      long id,
      StudyKind kind,
      String gauge,
      String structure,
      String purpose,
      int trials,
      long seed,
      String by,
      Instant at,
      Optional<Ending> ending) {}
}
