package dev.filmward.report;

import dev.filmward.pipeline.Passwords;
import dev.filmward.pipeline.Plant;
import dev.filmward.report.ReportForm.Choice;
import dev.filmward.report.ReportForm.Issue;
import dev.filmward.report.ReportForm.Size;
import dev.filmward.report.ReportForm.Standing;
import dev.filmward.report.ReportSettings.Schedule;
import dev.filmward.report.WeekReader.Scope;
import dev.filmward.report.paper.PaperForm;
import dev.filmward.store.ReportTable.Mailing;
import dev.filmward.store.StoredReport;
import dev.filmward.telling.Address;
import dev.filmward.telling.Attachment;
import dev.filmward.telling.Message;
import dev.filmward.telling.Post;
import dev.filmward.telling.Rule.Recipient;
import dev.filmward.telling.Sent;
import dev.filmward.telling.Settings;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Makes the weekly reports that are due, as drafts, and sends them, on a thread of its own. What
 * was missed while nothing ran, up to {@value #WEEKS_BACK} weeks, is made up for; a week is made
 * once. A mail that a server does not take is tried again, more and more seldom.
 */
public final class ReportSchedule implements AutoCloseable {
  static final int WEEKS_BACK = 8;

  private static final Logger LOG = LoggerFactory.getLogger(ReportSchedule.class);
  private static final int MOST_ATTEMPTS = 20;
  private static final int MOST_REPORTS = 10_000;

  private final Plant plant;
  private final ReportDesk desk;
  private final Post post;
  private final Passwords passwords;
  private final ScheduledExecutorService thread =
      Executors.newSingleThreadScheduledExecutor(task -> new Thread(task, "reports"));

  ReportSchedule(Plant plant, ReportDesk desk, Post post, Passwords passwords) {
    this.plant = plant;
    this.desk = desk;
    this.post = post;
    this.passwords = passwords;
  }

  /** Begins; looks once a minute. */
  public static ReportSchedule start(Plant plant, ReportDesk desk, Post post, Passwords passwords) {
    ReportSchedule schedule = new ReportSchedule(plant, desk, post, passwords);
    var unused = schedule.thread.scheduleWithFixedDelay(schedule::quietly, 5, 60, TimeUnit.SECONDS);
    return schedule;
  }

  private void quietly() {
    try {
      run();
    } catch (RuntimeException e) {
      LOG.warn("The weekly report could not be made; tried again in a minute", e);
    }
  }

  /** Makes and sends what is due now. */
  void run() {
    ReportDesk.Decided decided = desk.settings();
    Schedule schedule = decided.settings().schedule();
    if (!schedule.isOn() || decided.at().isEmpty()) {
      return;
    }
    Instant now = plant.clock().instant();
    List<ReportWeek> due = due(schedule, decided.at().get(), now);
    for (ReportWeek week : due) {
      StoredReport made = made(week).orElseGet(() -> desk.draft(week, Scope.ALL));
      for (String address : schedule.recipients()) {
        send(made, address, schedule);
      }
    }
    due(schedule, Instant.MIN, now).stream()
        .filter(week -> !due.contains(week))
        .forEach(week -> sendAgain(week, schedule));
  }

  /** A mail that is on its way stays so when something else is decided meanwhile. */
  private void sendAgain(ReportWeek week, Schedule schedule) {
    List<String> begun =
        schedule.recipients().stream()
            .filter(address -> mailing(week.word(), address).isPresent())
            .toList();
    if (!begun.isEmpty()) {
      made(week).ifPresent(made -> begun.forEach(address -> send(made, address, schedule)));
    }
  }

  private Optional<Mailing> mailing(String week, String address) {
    return plant.store().read(tables -> tables.reports().mailing(week, address));
  }

  /** Weeks whose report is due since the schedule was decided, the earliest first. */
  List<ReportWeek> due(Schedule schedule, Instant decided, Instant now) {
    List<ReportWeek> due = new ArrayList<>();
    ReportWeek current = ReportWeek.of(now, plant.zone());
    for (int back = WEEKS_BACK; back >= 0; back--) {
      ReportWeek making = current.minus(back);
      Instant at = at(making, schedule);
      if (!at.isAfter(now) && at.isAfter(decided)) {
        due.add(making.minus(1));
      }
    }
    return due;
  }

  /** An hour that a clock change skips is the one after it. */
  private static Instant at(ReportWeek week, Schedule schedule) {
    return ZonedDateTime.of(
            week.monday().plusDays(schedule.day() - 1L).atTime(schedule.hour(), 0), week.zone())
        .toInstant();
  }

  private Optional<StoredReport> made(ReportWeek week) {
    StoredReport.Scope scope = new StoredReport.Scope(week.word(), "", "");
    return desk.newest(MOST_REPORTS).stream()
        .filter(each -> each.scope().equals(scope))
        .findFirst();
  }

  private void send(StoredReport made, String address, Schedule schedule) {
    String week = made.scope().week();
    Instant now = plant.clock().instant();
    Optional<Mailing> before = mailing(week, address);
    int attempts = before.map(Mailing::attempts).orElse(0);
    if (before.flatMap(Mailing::sentAt).isPresent() || attempts >= MOST_ATTEMPTS) {
      return;
    }
    Duration wait = Duration.ofMinutes((long) attempts * attempts);
    if (before.isPresent() && now.isBefore(before.get().triedAt().plus(wait))) {
      return;
    }
    Sent sent = attempt(made, address, schedule);
    Optional<Instant> sentAt = sent.isTaken() ? Optional.of(now) : Optional.empty();
    plant
        .store()
        .change(
            tables ->
                tables
                    .reports()
                    .keep(new Mailing(week, address, attempts + 1, now, sentAt, sent.words())));
    if (!sent.isTaken()) {
      LOG.warn("The report of {} did not go out: {}", week, sent.words());
    }
  }

  private Sent attempt(StoredReport made, String address, Schedule schedule) {
    Settings settings = plant.store().read(tables -> tables.telling().settings().settings());
    Issue issue = desk.find(made.id());
    Choice choice =
        new Choice(schedule.language(), Size.valueOf(schedule.paper().toUpperCase(Locale.ROOT)));
    return post.send(
        new Message(
            "report-" + made.scope().week() + "-" + Integer.toHexString(address.hashCode()),
            "Filmward: capability report " + made.scope().week(),
            body(issue, settings),
            Optional.of(attachment(issue, choice))),
        new Recipient(address, Address.email(address), Optional.empty()),
        settings.mail(),
        plant.store().read(passwords::ofMail));
  }

  private static Attachment attachment(Issue issue, Choice choice) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      PaperForm.PDF.write(issue, choice, bytes);
    } catch (IOException e) {
      throw new IllegalStateException("the report could not be set as PDF", e);
    }
    return new Attachment(
        "filmward-" + issue.report().week() + ".pdf",
        PaperForm.PDF.mediaType(),
        bytes.toByteArray());
  }

  private static String body(Issue issue, Settings settings) {
    WeeklyReport report = issue.report();
    Standing standing = issue.standing();
    String state =
        standing.revision() == 0
            ? "A draft: nobody has signed it yet."
            : "Issued, revision " + standing.revision() + ", by " + standing.signedBy() + ".";
    String where =
        settings
            .publicAddress()
            .map(address -> "\n" + address + "/report.html?week=" + report.week() + "\n")
            .orElse("");
    return "The capability report of week %s is attached.\n%s\n%d of %d films are shown to be capable.\n%s"
        .formatted(
            report.week(), state, report.count(Verdict.CAPABLE), report.films().size(), where);
  }

  @Override
  public void close() {
    thread.shutdownNow();
  }
}
