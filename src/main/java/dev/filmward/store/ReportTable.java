package dev.filmward.store;

import dev.filmward.store.StoredReport.Scope;
import dev.filmward.store.StoredReport.Signature;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.jdbi.v3.core.Handle;

/** Weekly reports and what was decided about them; an issued one is never changed. */
public final class ReportTable {
  private static final String COLUMNS =
      "SELECT id, week, line, structure, revision, made_at, signed_by, signed_at, reason, digest,"
          + " data_digest, changes FROM report";

  private final Handle handle;

  ReportTable(Handle handle) {
    this.handle = handle;
  }

  /** Settings as they were decided. */
  public record Settings(int version, String json, String by, String reason, Instant at) {}

  /** The newest settings; empty where nobody decided. */
  public Optional<Settings> settings() {
    return handle
        .createQuery("SELECT * FROM report_settings ORDER BY version DESC LIMIT 1")
        .map(
            (row, context) ->
                new Settings(
                    row.getInt("version"),
                    row.getString("settings"),
                    row.getString("author"),
                    row.getString("reason"),
                    Times.toInstant(row.getLong("decided_at"))))
        .findOne();
  }

  public void add(Settings settings) {
    handle
        .createUpdate(
            "INSERT INTO report_settings (version, settings, author, reason, decided_at)"
                + " VALUES (:version, :json, :by, :reason, :at)")
        .bind("version", settings.version())
        .bind("json", settings.json())
        .bind("by", Nul.shown(settings.by()))
        .bind("reason", Nul.shown(settings.reason()))
        .bind("at", Times.toMicros(settings.at()))
        .execute();
  }

  /** A report on its way to somebody. */
  public record Mailing(
      String week,
      String address,
      int attempts,
      Instant triedAt,
      Optional<Instant> sentAt,
      String said) {}

  public Optional<Mailing> mailing(String week, String address) {
    return handle
        .createQuery("SELECT * FROM report_mail WHERE week = :week AND address = :address")
        .bind("week", week)
        .bind("address", address)
        .map(
            (row, context) ->
                new Mailing(
                    week,
                    address,
                    row.getInt("attempts"),
                    Times.toInstant(row.getLong("tried_at")),
                    Optional.ofNullable(row.getObject("sent_at"))
                        .map(at -> Times.toInstant(((Number) at).longValue())),
                    row.getString("said")))
        .findOne();
  }

  /** Keeps how far it came, in place of what was kept of it. */
  public void keep(Mailing mailing) {
    handle
        .createUpdate("DELETE FROM report_mail WHERE week = :week AND address = :address")
        .bind("week", mailing.week())
        .bind("address", mailing.address())
        .execute();
    handle
        .createUpdate(
            "INSERT INTO report_mail (week, address, attempts, tried_at, sent_at, said) VALUES"
                + " (:week, :address, :attempts, :triedAt, :sentAt, :said)")
        .bind("week", mailing.week())
        .bind("address", mailing.address())
        .bind("attempts", mailing.attempts())
        .bind("triedAt", Times.toMicros(mailing.triedAt()))
        .bind("sentAt", mailing.sentAt().map(Times::toMicros).orElse(null))
        .bind("said", Nul.shown(mailing.said()))
        .execute();
  }

  /** Keeps a report. A draft takes the place of the draft before it. */
  public StoredReport add(StoredReport report, byte[] json) {
    if (report.revision() == 0) {
      handle
          .createUpdate(
              "DELETE FROM report WHERE week = :week AND line = :line AND structure = :structure"
                  + " AND revision = 0")
          .bindMethods(report.scope())
          .execute();
    }
    long id =
        handle
            .createUpdate(
                "INSERT INTO report (week, line, structure, revision, made_at, signed_by,"
                    + " signed_at, reason, digest, data_digest, changes, content) VALUES (:week,"
                    + " :line, :structure, :revision, :madeAt, :by, :signedAt, :reason, :digest,"
                    + " :dataDigest, :changes, :content)")
            .bindMethods(report.scope())
            .bind("revision", report.revision())
            .bind("madeAt", Times.toMicros(report.madeAt()))
            .bind("by", report.signature().map(Signature::by).map(Nul::shown).orElse(""))
            .bind(
                "signedAt", report.signature().map(each -> Times.toMicros(each.at())).orElse(null))
            .bind("reason", report.signature().map(Signature::reason).map(Nul::shown).orElse(""))
            .bind("digest", report.digest())
            .bind("dataDigest", report.dataDigest())
            .bind("changes", report.changes())
            .bind("content", packed(json))
            .executeAndReturnGeneratedKeys("id")
            .mapTo(Long.class)
            .one();
    return find(id).orElseThrow();
  }

  public Optional<StoredReport> find(long id) {
    return handle
        .createQuery(COLUMNS + " WHERE id = :id")
        .bind("id", id)
        .map((row, context) -> report(row))
        .findOne();
  }

  /** Of a scope, the newest revision first, a draft last. */
  public List<StoredReport> of(Scope scope) {
    return handle
        .createQuery(
            COLUMNS
                + " WHERE week = :week AND line = :line AND structure = :structure"
                + " ORDER BY revision DESC")
        .bindMethods(scope)
        .map((row, context) -> report(row))
        .list();
  }

  /** The newest, newest week first. */
  public List<StoredReport> newest(int most) {
    return handle
        .createQuery(COLUMNS + " ORDER BY week DESC, line, structure, revision DESC LIMIT :most")
        .bind("most", most)
        .map((row, context) -> report(row))
        .list();
  }

  /** The report itself, as JSON. */
  public byte[] content(long id) {
    return unpacked(
        handle
            .createQuery("SELECT content FROM report WHERE id = :id")
            .bind("id", id)
            .map((row, context) -> row.getBytes("content"))
            .one());
  }

  private static StoredReport report(ResultSet row) throws SQLException {
    long signedAt = row.getLong("signed_at");
    Optional<Signature> signature =
        row.wasNull()
            ? Optional.empty()
            : Optional.of(
                new Signature(
                    row.getString("signed_by"),
                    Times.toInstant(signedAt),
                    row.getString("reason")));
    return new StoredReport(
        row.getLong("id"),
        new Scope(row.getString("week"), row.getString("line"), row.getString("structure")),
        row.getInt("revision"),
        Times.toInstant(row.getLong("made_at")),
        signature,
        row.getString("digest"),
        row.getString("data_digest"),
        row.getString("changes"));
  }

  private static byte[] packed(byte[] json) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(bytes)) {
      out.write(json);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private static byte[] unpacked(byte[] content) {
    try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(content))) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
