package dev.filmward.store;

import dev.filmward.diagnosis.Condition;
import dev.filmward.diagnosis.Revision;
import dev.filmward.diagnosis.Signature;
import dev.filmward.diagnosis.Signatures;
import dev.filmward.diagnosis.Suspect;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/** The signatures that are looked for, in versions; the built-in ones until there is one. */
public final class SignatureTable {
  private final Handle handle;
  private final RevisionRows revisions;

  SignatureTable(Handle handle) {
    this.handle = handle;
    this.revisions = new RevisionRows(handle, "signature_version");
  }

  /** Newest first. */
  public List<Revision> revisions() {
    return revisions.all();
  }

  public Optional<Revision> newest() {
    return revisions.newest();
  }

  /** The signatures that hold now. */
  public Signatures current() {
    return newest().map(revision -> of(revision.version())).orElseGet(Signatures::builtIn);
  }

  public Signatures of(int version) {
    return new Signatures(
        handle
            .createQuery("SELECT * FROM signature WHERE version = :version ORDER BY place")
            .bind("version", version)
            .map((row, context) -> signature(row, version))
            .list());
  }

  public void add(Revision revision, Signatures signatures) {
    revisions.add(revision);
    int place = 0;
    for (Signature signature : signatures.all()) {
      add(revision.version(), place, signature);
      int number = 0;
      for (Condition condition : signature.conditions()) {
        add(revision.version(), place, number++, condition);
      }
      place++;
    }
  }

  private void add(int version, int place, Signature signature) {
    handle
        .createUpdate(
            "INSERT INTO signature (version, place, code, name, kind, causes, checks, tells_apart)"
                + " VALUES (:version, :place, :code, :name, :kind, :causes, :checks, :tells)")
        .bind("version", version)
        .bind("place", place)
        .bind("code", signature.code())
        .bind("name", Nul.shown(signature.name()))
        .bind("kind", signature.kind().word())
        .bind("causes", Nul.shown(causes(signature)))
        .bind("checks", Nul.shown(String.join("\n", signature.checks())))
        .bind("tells", Nul.shown(signature.tellsApart()))
        .execute();
  }

  private void add(int version, int place, int number, Condition condition) {
    handle
        .createUpdate(
            "INSERT INTO signature_condition"
                + " (version, place, number, statistic, comparison, threshold, weight, role)"
                + " VALUES (:version, :place, :number, :statistic, :comparison, :threshold,"
                + " :weight, :role)")
        .bind("version", version)
        .bind("place", place)
        .bind("number", number)
        .bind("statistic", condition.statistic().word())
        .bind("comparison", condition.comparison().word())
        .bind("threshold", condition.threshold())
        .bind("weight", condition.weight())
        .bind("role", condition.role().word())
        .execute();
  }

  private static String causes(Signature signature) {
    return signature.causes().stream()
        .map(suspect -> suspect.code() + " " + suspect.words())
        .collect(Collectors.joining("\n"));
  }

  private Signature signature(ResultSet row, int version) throws SQLException {
    return new Signature(
        row.getString("code"),
        row.getString("name"),
        Signature.Kind.fromWord(row.getString("kind")),
        conditions(version, row.getInt("place")),
        row.getString("causes").lines().map(SignatureTable::suspect).toList(),
        row.getString("checks").lines().toList(),
        row.getString("tells_apart"));
  }

  private static Suspect suspect(String line) {
    int blank = line.indexOf(' ');
    return new Suspect(line.substring(0, blank), line.substring(blank + 1));
  }

  private List<Condition> conditions(int version, int place) {
    return handle
        .createQuery(
            "SELECT * FROM signature_condition WHERE version = :version AND place = :place"
                + " ORDER BY number")
        .bind("version", version)
        .bind("place", place)
        .map(
            (row, context) ->
                Condition.of(
                    row.getString("statistic"),
                    row.getString("comparison"),
                    row.getDouble("threshold"),
                    row.getDouble("weight"),
                    row.getString("role")))
        .list();
  }
}
