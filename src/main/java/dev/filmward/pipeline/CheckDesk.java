package dev.filmward.pipeline;

import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.gauge.calibration.CheckChart;
import dev.filmward.gauge.calibration.CheckReading;
import dev.filmward.gauge.calibration.CheckStandard;
import dev.filmward.gauge.calibration.GaugeUse;
import dev.filmward.gauge.calibration.Linearity;
import dev.filmward.gauge.calibration.Scaling.Word;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.CheckTable.Verdict;
import dev.filmward.store.FigureTable.Span;
import dev.filmward.store.Tables;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;

/**
 * Check standards: known films that a gauge is checked on at the start of a shift. A check beyond
 * its limits makes the samples since the gauge's last good check doubtful, and those up to its next
 * good one; nothing is deleted, and a person decides. Thread-safe; each change is one transaction.
 */
public final class CheckDesk {
  private static final String LEAVE_OUT = "leave-out";
  private static final List<String> VERDICTS = List.of("keep", LEAVE_OUT);

  /** The least difference between two times that are kept. */
  private static final Duration INSTANT = Duration.ofNanos(1000);

  private final Plant plant;
  private final Judging judging;
  private final Consumer<PlantEvent> listener;

  CheckDesk(Plant plant, Judging judging, Consumer<PlantEvent> listener) {
    this.plant = plant;
    this.judging = judging;
    this.listener = listener;
  }

  /** A standard with its chart. */
  public record Charted(CheckStandard standard, List<CheckReading> readings, CheckChart chart) {
    public Charted {
      readings = List.copyOf(readings);
    }
  }

  /**
   * Samples that a failed check made doubtful.
   *
   * @param after the last good check of the gauge before; from the beginning where there is none
   * @param before the first good check after; empty where there is none yet
   * @param samples how many by the lines that the gauge measured
   */
  public record Doubt(
      CheckReading failed,
      String gauge,
      Optional<Instant> after,
      Optional<Instant> before,
      Map<String, Long> samples,
      Optional<Verdict> verdict) {
    public Doubt {
      samples = new TreeMap<>(samples);
    }

    /** The time of the samples that are doubtful by it. */
    Span span() {
      return new Span(
          after.map(good -> good.plus(INSTANT)).orElse(Span.always().from()),
          before.map(good -> good.minus(INSTANT)).orElse(Span.always().to()));
    }

    /** Whether a sample of a line is doubtful by it. */
    public boolean covers(String line, Instant takenAt) {
      return samples.containsKey(line)
          && after.map(takenAt::isAfter).orElse(true)
          && before.map(takenAt::isBefore).orElse(true);
    }
  }

  /** All there is. */
  public record All(List<Charted> standards, Map<String, Linearity> linearity, List<Doubt> doubts) {
    public All {
      standards = List.copyOf(standards);
      linearity = new LinkedHashMap<>(linearity);
      doubts = List.copyOf(doubts);
    }
  }

  public All read() {
    return plant.store().read(CheckDesk::read);
  }

  static All read(Tables tables) {
    List<Charted> charted = new ArrayList<>();
    Map<String, List<Linearity.At>> biases = new LinkedHashMap<>();
    for (CheckStandard standard : tables.checkStandards().standards()) {
      List<CheckReading> readings = tables.checkStandards().readings(standard.id());
      CheckChart chart = CheckChart.of(standard, readings);
      charted.add(new Charted(standard, readings, chart));
      biases
          .computeIfAbsent(standard.gauge(), any -> new ArrayList<>())
          .add(new Linearity.At(standard.film().thicknessUm(), chart.bias()));
    }
    Map<String, Linearity> linearity = new LinkedHashMap<>();
    biases.forEach((gauge, some) -> linearity.put(gauge, Linearity.of(some)));
    return new All(charted, linearity, doubts(tables, charted));
  }

  private record Checked(CheckReading reading, String gauge, boolean isGood) {}

  private static List<Doubt> doubts(Tables tables, List<Charted> charted) {
    List<Checked> checks = new ArrayList<>();
    for (Charted each : charted) {
      for (CheckReading reading : each.readings) {
        boolean isGood = !each.chart.isBeyond(reading.um());
        checks.add(new Checked(reading, each.standard.gauge(), isGood));
      }
    }
    Map<Long, Verdict> verdicts = tables.checkStandards().verdicts();
    return checks.stream()
        .filter(check -> !check.isGood)
        .map(check -> doubt(tables, check, checks, verdicts))
        .sorted((a, b) -> b.failed.at().compareTo(a.failed.at()))
        .toList();
  }

  private static Doubt doubt(
      Tables tables, Checked failed, List<Checked> checks, Map<Long, Verdict> verdicts) {
    Instant at = failed.reading.at();
    List<Instant> good =
        checks.stream()
            .filter(check -> check.isGood && check.gauge.equals(failed.gauge))
            .map(check -> check.reading.at())
            .toList();
    Optional<Instant> after = good.stream().filter(at::isAfter).max(Instant::compareTo);
    Optional<Instant> before = good.stream().filter(at::isBefore).min(Instant::compareTo);
    Map<String, Long> samples = new TreeMap<>();
    for (String line : lines(tables.gauges().uses(), failed.gauge, at)) {
      Instant first = after.orElse(Instant.EPOCH);
      Instant last = before.orElse(Instant.parse("9999-01-01T00:00:00Z"));
      samples.put(line, tables.checkStandards().samples(line, first, last));
    }
    return new Doubt(
        failed.reading,
        failed.gauge,
        after,
        before,
        samples,
        Optional.ofNullable(verdicts.get(failed.reading.id())));
  }

  /** The lines that a gauge measured at a moment. */
  private static List<String> lines(List<GaugeUse> uses, String gauge, Instant at) {
    Map<String, GaugeUse> held = new TreeMap<>();
    for (GaugeUse use : uses) {
      GaugeUse known = held.get(use.line());
      boolean isLater = known == null || !use.holdsFrom().isBefore(known.holdsFrom());
      if (!use.holdsFrom().isAfter(at) && isLater) {
        held.put(use.line(), use);
      }
    }
    return held.values().stream()
        .filter(use -> use.gauge().equals(gauge))
        .map(GaugeUse::line)
        .toList();
  }

  /**
   * Keeps a standard.
   *
   * @throws NoSuchElementException if there is no such gauge
   */
  public void keep(CheckStandard standard) {
    plant
        .store()
        .change(
            tables -> {
              GaugeDesk.requireGauge(tables, standard.gauge());
              tables.checkStandards().add(standard);
              String what = String.format(Locale.ROOT, "%.6g um: ", standard.film().thicknessUm());
              audit(
                  tables, standard.gauge() + ", " + standard.film().name(), what, standard.word());
            });
  }

  /**
   * Notes what a gauge showed on a standard.
   *
   * @throws NoSuchElementException if there is no such standard
   * @throws IllegalArgumentException if it is yet to come
   */
  public void note(CheckReading reading) {
    Instant now = plant.clock().instant();
    if (reading.at().isAfter(now)) {
      throw new IllegalArgumentException("a check is noted after it was done");
    }
    plant
        .store()
        .change(
            tables -> {
              CheckStandard standard = standard(tables, reading.standardId());
              tables.checkStandards().add(reading, now);
              String subject = standard.gauge() + ", " + standard.film().name();
              String what = String.format(Locale.ROOT, "read %.6g um: ", reading.um());
              String note = reading.note().isEmpty() ? "no note" : reading.note();
              audit(tables, subject, what, new Word(reading.by(), note, now));
            });
    tellLines();
  }

  /**
   * Says what becomes of the samples that a failed check made doubtful. Those left out are not
   * charted, until somebody says that they are to be kept; either way they stay marked.
   *
   * @param verdict {@code keep} or {@code leave-out}
   * @throws NoSuchElementException if there is no such check, or it did not fail
   */
  public void decide(long readingId, String verdict, Word word) {
    if (!VERDICTS.contains(verdict)) {
      throw new IllegalArgumentException(
          "doubtful samples are to \"keep\" or to \"leave-out\", not \"" + verdict + "\"");
    }
    List<Runnable> afterwards =
        plant
            .store()
            .write(
                tables -> {
                  Doubt doubt =
                      read(tables).doubts.stream()
                          .filter(each -> each.failed.id() == readingId)
                          .findFirst()
                          .orElseThrow(
                              () -> new NoSuchElementException("no failed check " + readingId));
                  tables.checkStandards().decide(readingId, new Verdict(verdict, word));
                  audit(tables, "check " + readingId, verdict + ": ", word);
                  return leaveOutOrPutBack(tables, doubt, verdict, word);
                });
    afterwards.forEach(Runnable::run);
    tellLines();
  }

  private List<Runnable> leaveOutOrPutBack(Tables tables, Doubt doubt, String verdict, Word word) {
    LeavingOut out =
        new LeavingOut(
            tables,
            judging,
            code -> plant.structures().find(code),
            "failed check " + doubt.failed.id());
    Decision decision = new Decision(word.by(), word.reason(), word.at());
    List<Runnable> afterwards = new ArrayList<>();
    for (String line : doubt.samples.keySet()) {
      afterwards.addAll(
          verdict.equals(LEAVE_OUT)
              ? out.leaveOut(line, doubt.span(), decision)
              : out.putBack(line, doubt.span(), decision));
    }
    return afterwards;
  }

  /** Pages that show series of lines look again. */
  private void tellLines() {
    plant
        .store()
        .read(tables -> tables.samples().productions())
        .forEach(
            made -> listener.accept(new PlantEvent.LimitsFrozen(made.line(), made.structure())));
  }

  private static CheckStandard standard(Tables tables, long id) {
    return tables
        .checkStandards()
        .standard(id)
        .orElseThrow(() -> new NoSuchElementException("no check standard " + id));
  }

  private static void audit(Tables tables, String subject, String what, Word word) {
    tables
        .audit()
        .add(new AuditEntry(word.at(), word.by(), "check", subject, what + word.reason()));
  }
}
