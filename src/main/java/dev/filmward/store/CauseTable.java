package dev.filmward.store;

import dev.filmward.diagnosis.Cause;
import dev.filmward.diagnosis.Causes;
import dev.filmward.diagnosis.Revision;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** The plant's list of causes, in versions; the built-in list until there is one. */
public final class CauseTable {
  private final Handle handle;
  private final RevisionRows revisions;

  CauseTable(Handle handle) {
    this.handle = handle;
    this.revisions = new RevisionRows(handle, "cause_version");
  }

  /** Newest first. */
  public List<Revision> revisions() {
    return revisions.all();
  }

  public Optional<Revision> newest() {
    return revisions.newest();
  }

  /** The causes that hold now. */
  public Causes current() {
    return newest().map(revision -> of(revision.version())).orElse(Causes.BUILT_IN);
  }

  public Causes of(int version) {
    return new Causes(
        handle
            .createQuery("SELECT * FROM cause WHERE version = :version ORDER BY place")
            .bind("version", version)
            .map(
                (row, context) ->
                    new Cause(
                        row.getString("code"),
                        row.getString("words"),
                        Cause.Standing.fromWord(row.getString("standing"))))
            .list());
  }

  public void add(Revision revision, Causes causes) {
    revisions.add(revision);
    int place = 0;
    for (Cause cause : causes.all()) {
      handle
          .createUpdate(
              "INSERT INTO cause (version, place, code, words, standing)"
                  + " VALUES (:version, :place, :code, :words, :standing)")
          .bind("version", revision.version())
          .bind("place", place++)
          .bind("code", cause.code())
          .bind("words", Nul.shown(cause.words()))
          .bind("standing", cause.standing().word())
          .execute();
    }
  }
}
