package dev.filmward.store;

import dev.filmward.diagnosis.CheckPlan;
import dev.filmward.diagnosis.Pattern;
import dev.filmward.diagnosis.Revision;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** The plant's plan of first checks, in versions; the built-in plan until there is one. */
public final class CheckPlanTable {
  private static final String PATTERN = "pattern/";
  private static final String CAUSE = "cause/";

  private final Handle handle;
  private final RevisionRows revisions;

  CheckPlanTable(Handle handle) {
    this.handle = handle;
    this.revisions = new RevisionRows(handle, "check_version");
  }

  /** Newest first. */
  public List<Revision> revisions() {
    return revisions.all();
  }

  public Optional<Revision> newest() {
    return revisions.newest();
  }

  /** The plan that holds now. */
  public CheckPlan current() {
    return newest().map(revision -> of(revision.version())).orElse(CheckPlan.BUILT_IN);
  }

  public CheckPlan of(int version) {
    Map<Pattern, List<String>> byPattern = new EnumMap<>(Pattern.class);
    Map<String, List<String>> byCause = new LinkedHashMap<>();
    topics(version)
        .forEach(
            (topic, checks) -> {
              if (topic.startsWith(PATTERN)) {
                byPattern.put(Pattern.fromWord(topic.substring(PATTERN.length())), checks);
              } else {
                byCause.put(topic.substring(CAUSE.length()), checks);
              }
            });
    return new CheckPlan(byPattern, byCause);
  }

  public void add(Revision revision, CheckPlan plan) {
    revisions.add(revision);
    plan.byPattern().forEach((pattern, checks) -> add(revision, PATTERN + pattern.word(), checks));
    plan.byCause().forEach((code, checks) -> add(revision, CAUSE + code, checks));
  }

  private Map<String, List<String>> topics(int version) {
    Map<String, List<String>> topics = new LinkedHashMap<>();
    handle
        .createQuery("SELECT * FROM planned_check WHERE version = :version ORDER BY topic, place")
        .bind("version", version)
        .map(
            (row, context) ->
                topics
                    .computeIfAbsent(row.getString("topic"), topic -> new ArrayList<>())
                    .add(row.getString("words")))
        .list();
    return topics;
  }

  private void add(Revision revision, String topic, List<String> checks) {
    int place = 0;
    for (String check : checks) {
      handle
          .createUpdate(
              "INSERT INTO planned_check (version, topic, place, words)"
                  + " VALUES (:version, :topic, :place, :words)")
          .bind("version", revision.version())
          .bind("topic", topic)
          .bind("place", place++)
          .bind("words", Nul.shown(check))
          .execute();
    }
  }
}
