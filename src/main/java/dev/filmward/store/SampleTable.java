package dev.filmward.store;

import dev.filmward.film.Sample;
import dev.filmward.film.SampleKey;
import dev.filmward.subgroup.Subgroup;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.result.ResultIterator;
import org.jdbi.v3.core.statement.PreparedBatch;

/** Samples with all their readings and subgroup figures. */
public final class SampleTable {
  private final Handle handle;

  SampleTable(Handle handle) {
    this.handle = handle;
  }

  /** A sample as it is kept. */
  public record Stored(long id, Sample sample) {}

  /** By which file a sample came, and when. */
  public record Origin(long fileId, Instant receivedAt) {}

  /**
   * One characteristic of a sample, summed up.
   *
   * @param position 0 for the total
   */
  public record Figures(int position, Optional<Subgroup> subgroup) {}

  /** A reading that takes the place of another one. */
  public record Correction(int position, int lane, double oldUm, double newUm) {}

  /** What a line has made. */
  public record Production(String line, String structure, long samples, Instant lastAt) {}

  public Optional<Stored> find(SampleKey key) {
    return handle
        .createQuery(
            "SELECT * FROM sample WHERE line = :line AND structure = :structure AND roll = :roll"
                + " AND sample = :sample")
        .bindMethods(key)
        .map((row, context) -> new Header(row))
        .findOne()
        .map(this::load);
  }

  /** The newest samples of a production, oldest first. */
  public List<Stored> newest(String line, String structure, int most) {
    return handle
        .createQuery(
            "SELECT * FROM (SELECT * FROM sample WHERE line = :line AND structure = :structure"
                + " ORDER BY taken_at DESC, roll DESC, sample DESC LIMIT :most)"
                + " ORDER BY taken_at, roll, sample")
        .bind("line", line)
        .bind("structure", structure)
        .bind("most", most)
        .map((row, context) -> new Header(row))
        .list()
        .stream()
        .map(this::load)
        .toList();
  }

  /** Gives every sample to a receiver, one at a time, in the order in which they came. */
  public void forEach(Consumer<Sample> receiver) {
    try (ResultIterator<Row> rows =
        handle
            .createQuery(
                "SELECT s.*, g.um FROM sample s JOIN subgroup g ON g.sample_id = s.id"
                    + " WHERE g.position > 0 ORDER BY s.id, g.position")
            .map((row, context) -> new Row(new Header(row), row.getString("um")))
            .iterator()) {
      List<double[]> layers = new ArrayList<>();
      Optional<Header> current = Optional.empty();
      while (rows.hasNext()) {
        Row row = rows.next();
        if (current.isPresent() && current.get().id != row.header.id) {
          receiver.accept(current.get().sample(layers));
          layers.clear();
        }
        current = Optional.of(row.header);
        layers.add(ReadingArray.readings(row.um));
      }
      current.ifPresent(last -> receiver.accept(last.sample(layers)));
    }
  }

  private record Row(Header header, String um) {}

  public long insert(Sample sample, Origin origin, List<Figures> figures) {
    SampleKey key = sample.key();
    long id =
        handle
            .createUpdate(
                "INSERT INTO sample"
                    + " (line, structure, roll, sample, taken_at, received_at, file_id, lanes)"
                    + " VALUES (:line, :structure, :roll, :sample, :takenAt, :receivedAt, :fileId,"
                    + " :lanes)")
            .bindMethods(key)
            .bind("takenAt", Times.toMicros(sample.takenAt()))
            .bind("receivedAt", Times.toMicros(origin.receivedAt()))
            .bind("fileId", origin.fileId())
            .bind("lanes", ReadingArray.ofLanes(sample))
            .executeAndReturnGeneratedKeys("id")
            .mapTo(Long.class)
            .one();
    writeFigures(id, sample, figures);
    noteProduction(sample, 1);
    return id;
  }

  public void update(long id, Sample sample, List<Figures> figures) {
    handle
        .createUpdate("UPDATE sample SET taken_at = :takenAt, lanes = :lanes WHERE id = :id")
        .bind("id", id)
        .bind("takenAt", Times.toMicros(sample.takenAt()))
        .bind("lanes", ReadingArray.ofLanes(sample))
        .execute();
    handle.createUpdate("DELETE FROM subgroup WHERE sample_id = :id").bind("id", id).execute();
    writeFigures(id, sample, figures);
    noteProduction(sample, 0);
  }

  public void correct(long id, List<Correction> corrections, Origin origin) {
    for (Correction correction : corrections) {
      handle
          .createUpdate(
              "INSERT INTO correction"
                  + " (sample_id, position, lane, old_um, new_um, file_id, corrected_at)"
                  + " VALUES (:id, :position, :lane, :oldUm, :newUm, :fileId, :receivedAt)")
          .bind("id", id)
          .bindMethods(correction)
          .bind("fileId", origin.fileId())
          .bind("receivedAt", Times.toMicros(origin.receivedAt()))
          .execute();
    }
  }

  /** What all lines have made, by line, the newest first. */
  public List<Production> productions() {
    return handle
        .createQuery("SELECT * FROM production ORDER BY line, last_at DESC, structure")
        .map(
            (row, context) ->
                new Production(
                    row.getString("line"),
                    row.getString("structure"),
                    row.getLong("samples"),
                    Times.toInstant(row.getLong("last_at"))))
        .list();
  }

  /** When a line first made something else after a moment. */
  public Optional<Instant> changedAfter(String line, String structure, Instant moment) {
    return productions().stream()
        .filter(made -> made.line().equals(line) && !made.structure().equals(structure))
        .filter(made -> made.lastAt().isAfter(moment))
        .map(made -> firstAfter(line, made.structure(), moment))
        .flatMap(Optional::stream)
        .min(Comparator.naturalOrder());
  }

  private Optional<Instant> firstAfter(String line, String structure, Instant moment) {
    return handle
        .createQuery(
            "SELECT min(taken_at) FROM sample"
                + " WHERE line = :line AND structure = :structure AND taken_at > :moment")
        .bind("line", line)
        .bind("structure", structure)
        .bind("moment", Times.toMicros(moment))
        .mapTo(Long.class)
        .findOne()
        .map(Times::toInstant);
  }

  private void noteProduction(Sample sample, int more) {
    handle
        .createUpdate(
            "INSERT INTO production (line, structure, samples, last_at)"
                + " VALUES (:line, :structure, :more, :at)"
                + " ON CONFLICT (line, structure) DO UPDATE SET samples = samples + :more,"
                + " last_at = max(last_at, :at)")
        .bind("line", sample.key().line())
        .bind("structure", sample.key().structure())
        .bind("more", more)
        .bind("at", Times.toMicros(sample.takenAt()))
        .execute();
  }

  private void writeFigures(long id, Sample sample, List<Figures> figures) {
    PreparedBatch batch =
        handle.prepareBatch(
            "INSERT INTO subgroup (sample_id, position, um, size, mean, least, greatest, squares)"
                + " VALUES (:id, :position, :um, :size, :mean, :least, :greatest, :squares)");
    for (Figures figure : figures) {
      int position = figure.position();
      Optional<Subgroup> subgroup = figure.subgroup();
      batch
          .bind("id", id)
          .bind("position", position)
          .bind("um", position > 0 ? ReadingArray.ofLayer(sample, position) : null)
          .bind("size", subgroup.map(Subgroup::size).orElse(0))
          .bind("mean", subgroup.map(Subgroup::mean).orElse(null))
          .bind("least", subgroup.map(Subgroup::least).orElse(null))
          .bind("greatest", subgroup.map(Subgroup::greatest).orElse(null))
          .bind("squares", subgroup.map(Subgroup::sumOfSquares).orElse(null))
          .add();
    }
    batch.execute();
  }

  private Stored load(Header header) {
    List<double[]> layers =
        handle
            .createQuery(
                "SELECT um FROM subgroup WHERE sample_id = :id AND position > 0 ORDER BY position")
            .bind("id", header.id)
            .map((row, context) -> ReadingArray.readings(row.getString("um")))
            .list();
    return new Stored(header.id, header.sample(layers));
  }

  private static final class Header {
    private final long id;
    private final SampleKey key;
    private final Instant takenAt;
    private final int[] lanes;

    private Header(ResultSet row) throws SQLException {
      id = row.getLong("id");
      key =
          new SampleKey(
              row.getString("line"),
              row.getString("structure"),
              row.getString("roll"),
              row.getString("sample"));
      takenAt = Times.toInstant(row.getLong("taken_at"));
      lanes = ReadingArray.lanes(row.getString("lanes"));
    }

    private Sample sample(List<double[]> layers) {
      return new Sample(key, takenAt, lanes, layers.toArray(double[][]::new));
    }
  }
}
