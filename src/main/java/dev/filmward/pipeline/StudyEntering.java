package dev.filmward.pipeline;

import dev.filmward.gauge.study.StudyPlan;
import dev.filmward.gauge.study.StudyPlan.PlannedLayer;
import dev.filmward.gauge.study.StudyStep;
import dev.filmward.intake.Words;
import dev.filmward.pipeline.StudyDesk.Cell;
import dev.filmward.pipeline.StudyDesk.Given;
import dev.filmward.pipeline.StudyDesk.Look;
import dev.filmward.pipeline.StudyDesk.Sender;
import dev.filmward.pipeline.StudyDesk.Taken;
import dev.filmward.store.StoredStudy.Entry;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Sorts readings that are entered into fresh, known and corrected ones. One owner, one thread. */
final class StudyEntering {
  private final StudyPlan plan;
  private final Map<Cell, Entry> holding;
  private final Sender sender;
  private final Instant at;
  private final LocalDate today;
  private final List<Entry> entries = new ArrayList<>();
  private int known;
  private int corrected;

  StudyEntering(Look look, Sender sender, ZonedDateTime now) {
    this.plan = look.study().plan();
    this.holding = new HashMap<>(look.entries());
    this.sender = sender;
    this.at = now.toInstant();
    this.today = now.toLocalDate();
  }

  void take(Given given) {
    String layer = checked(given);
    checkDate(given.step());
    @Nullable Entry before = holding.get(new Cell(given.step(), layer));
    if (before != null && before.um() == given.um()) {
      known++;
      return;
    }
    if (before != null && sender.why().isBlank()) {
      throw new IllegalStateException(
          place(given.step(), layer)
              + " was entered as "
              + before.um()
              + " by "
              + before.by()
              + "; say why it is "
              + given.um());
    }
    corrected += before == null ? 0 : 1;
    String why = before == null ? "" : sender.why();
    Entry entry = new Entry(given.step(), layer, given.um(), sender.by(), at, why);
    holding.put(new Cell(given.step(), layer), entry);
    entries.add(entry);
  }

  List<Entry> entries() {
    return entries;
  }

  Taken taken() {
    return new Taken(entries.size() - corrected, known, corrected);
  }

  /** The name of the layer. */
  private String checked(Given given) {
    StudyStep step = given.step();
    check("part", step.part(), plan.parts());
    check("operator", step.operator(), plan.operators());
    if (step.trial() > plan.trials()) {
      throw new IllegalArgumentException(
          "trial " + step.trial() + " is not planned; there are " + plan.trials());
    }
    List<String> names = plan.layers().stream().map(PlannedLayer::name).toList();
    if (names.contains(given.layer())) {
      return given.layer();
    }
    for (int i = 0; i < names.size(); i++) {
      if (given.layer().equals(String.valueOf(i + 1))) {
        return names.get(i);
      }
    }
    throw unplanned("layer", given.layer(), names);
  }

  private void checkDate(StudyStep step) {
    Optional<LocalDate> date = plan.dateOf(step.trial()).filter(day -> day.isAfter(today));
    if (date.isPresent()) {
      throw new IllegalArgumentException(
          "trial "
              + step.trial()
              + " is to be measured on "
              + date.get()
              + ", which is still to come");
    }
  }

  private static void check(String what, String name, List<String> planned) {
    if (!planned.contains(name)) {
      throw unplanned(what, name, planned);
    }
  }

  private static IllegalArgumentException unplanned(
      String what, String name, List<String> planned) {
    return new IllegalArgumentException(
        what + " " + Words.quoted(name) + " is not planned; there are " + Words.some(planned));
  }

  private static String place(StudyStep step, String layer) {
    return layer
        + " of part "
        + Words.quoted(step.part())
        + " by "
        + Words.quoted(step.operator())
        + ", trial "
        + step.trial()
        + ",";
  }
}
