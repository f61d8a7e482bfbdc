package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.pipeline.LongWork;
import dev.filmward.pipeline.Plant;
import dev.filmward.report.CharacteristicWeek;
import dev.filmward.report.FilmComparison;
import dev.filmward.report.FilmWeek;
import dev.filmward.report.ReportDesk;
import dev.filmward.report.ReportForm.Choice;
import dev.filmward.report.ReportForm.Issue;
import dev.filmward.report.ReportForm.Size;
import dev.filmward.report.ReportForm.Standing;
import dev.filmward.report.ReportForms;
import dev.filmward.report.ReportJson;
import dev.filmward.report.ReportSettings;
import dev.filmward.report.ReportWeek;
import dev.filmward.report.WeekReader;
import dev.filmward.report.WeekReader.Scope;
import dev.filmward.report.WeeklyReport;
import dev.filmward.store.SampleTable;
import dev.filmward.store.StoredReport;
import dev.filmward.store.StoredReport.Signature;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.NoSuchElementException;
import java.util.Optional;

/** Weekly reports: previews, issued ones, their forms, what was decided about them. */
final class ReportResource {
  private static final int MOST = 500;

  private final Plant plant;
  private final ReportDesk desk;

  ReportResource(Plant plant, String version) {
    this.plant = plant;
    this.desk = new ReportDesk(plant, new WeekReader(plant, version));
  }

  /** Kept reports, the films there are, and what was decided. */
  void list(Context ctx) {
    ObjectNode answer = Wire.object();
    answer.put("now", Wire.time(plant.clock().instant(), plant.zone()));
    answer.put("zone", plant.zone().getId());
    answer.put("lastWeek", ReportWeek.of(plant.clock().instant(), plant.zone()).minus(1).word());
    ArrayNode films = answer.putArray("films");
    for (SampleTable.Production made :
        plant.store().read(tables -> tables.samples().productions())) {
      films
          .addObject()
          .put("line", made.line())
          .put("structure", made.structure())
          .put("lastWeek", ReportWeek.of(made.lastAt(), plant.zone()).word());
    }
    ArrayNode reports = answer.putArray("reports");
    desk.newest(MOST).forEach(stored -> reports.add(json(stored)));
    answer.set("settings", settings(desk.settings()));
    ctx.json(answer);
  }

  private ObjectNode json(StoredReport stored) {
    ObjectNode node =
        Wire.object()
            .put("id", stored.id())
            .put("week", stored.scope().week())
            .put("line", stored.scope().line())
            .put("structure", stored.scope().structure())
            .put("revision", stored.revision())
            .put("madeAt", Wire.time(stored.madeAt(), plant.zone()))
            .put("digest", stored.digest())
            .put("dataDigest", stored.dataDigest());
    node.put("signedBy", stored.signature().map(Signature::by).orElse(null));
    node.put(
        "signedAt",
        stored.signature().map(each -> Wire.time(each.at(), plant.zone())).orElse(null));
    node.put("reason", stored.signature().map(Signature::reason).orElse(null));
    return node;
  }

  private ObjectNode settings(ReportDesk.Decided decided) {
    ObjectNode node = (ObjectNode) ReportJson.tree(decided.settings());
    node.put("version", decided.version()).put("by", decided.by()).put("why", decided.reason());
    node.put("at", decided.at().map(at -> Wire.time(at, plant.zone())).orElse(null));
    return node;
  }

  /** A week as it is known now, or a kept one by its number. */
  void get(Context ctx) {
    Issue known = known(ctx);
    Issue issue = edition(ctx, known);
    WeeklyReport report = issue.report();
    ObjectNode answer = Wire.object();
    answer.put("seen", ReportJson.seen(known.report()));
    answer.set("report", ReportJson.tree(report));
    answer.set("standing", ReportJson.tree(issue.standing()));
    answer.set("acts", ReportJson.tree(report.acts()));
    answer.set("money", ReportJson.tree(report.money()));
    ctx.json(answer);
  }

  private Issue known(Context ctx) {
    return Requests.number(ctx, "id")
        .map(desk::find)
        .orElseGet(() -> new Issue(desk.preview(week(ctx, "week"), scope(ctx)), Standing.DRAFT));
  }

  private static Issue edition(Context ctx, Issue issue) {
    return switch (Requests.textOr(ctx, "edition", "internal")) {
      case "internal" -> issue;
      case "customer" -> customer(issue);
      default -> throw new IllegalArgumentException("edition is internal or customer");
    };
  }

  private static Issue customer(Issue issue) {
    Standing is = issue.standing();
    return new Issue(
        issue.report().forCustomer(),
        new Standing(is.revision(), "", is.signedAt(), "", is.changes(), is.digest()));
  }

  /** The same as a file. */
  void file(Context ctx) throws IOException {
    ReportForms.NamedForm form = ReportForms.byEnding(Requests.textOr(ctx, "form", "pdf"));
    Choice choice = choice(ctx);
    Issue issue = edition(ctx, known(ctx));
    LongWork.current().goOn();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    form.form().write(issue, choice, bytes);
    LongWork.current().goOn();
    String name = "filmward-" + issue.report().week() + "." + form.ending();
    ctx.contentType(form.mediaType())
        .header("Content-Disposition", "attachment; filename=\"" + name + "\"")
        .result(bytes.toByteArray());
  }

  private static Choice choice(Context ctx) {
    String language = Requests.textOr(ctx, "language", "en");
    if (!language.equals("en") && !language.equals("de")) {
      throw new IllegalArgumentException("language is en or de, not \"" + language + "\"");
    }
    return switch (Requests.textOr(ctx, "paper", "a4")) {
      case "a4" -> new Choice(language, Size.A4);
      case "letter" -> new Choice(language, Size.LETTER);
      default -> throw new IllegalArgumentException("paper is a4 or letter");
    };
  }

  void issueNow(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    Scope scope =
        new Scope(Requests.fieldOr(body, "line", ""), Requests.fieldOr(body, "structure", ""));
    Signature signature =
        new Signature(
            Requests.by(ctx, body), plant.clock().instant(), Requests.field(body, "reason"));
    ReportWeek week = ReportWeek.parse(Requests.field(body, "week"), plant.zone());
    ctx.json(json(desk.issue(week, scope, Requests.field(body, "seen"), signature)));
  }

  void decide(Context ctx) throws IOException {
    JsonNode body = Requests.body(ctx);
    ReportSettings settings = ReportJson.settings(body.path("settings"));
    ctx.json(
        settings(desk.decide(settings, Requests.by(ctx, body), Requests.field(body, "reason"))));
  }

  /** Two weeks, lines or structures beside each other. */
  void compare(Context ctx) {
    FilmWeek first =
        film(week(ctx, "week"), Requests.text(ctx, "line"), Requests.text(ctx, "structure"));
    FilmWeek second =
        film(
            week(ctx, "otherWeek"),
            Requests.textOr(ctx, "otherLine", first.line()),
            Requests.textOr(ctx, "otherStructure", first.structure()));
    FilmComparison comparison = FilmComparison.of(first, second);
    ObjectNode answer = Wire.object();
    ArrayNode pairs = answer.putArray("pairs");
    for (FilmComparison.Pair pair : comparison.pairs()) {
      ObjectNode node = pairs.addObject();
      node.set("first", figures(pair.first()));
      node.set("second", figures(pair.second()));
      Wire.number(node, "z", pair.z());
      node.put("differs", pair.differs());
    }
    answer.put("firstVerdict", first.verdict().name());
    answer.put("secondVerdict", second.verdict().name());
    ctx.json(answer);
  }

  /** All but the columns of drawings. */
  private static JsonNode figures(CharacteristicWeek week) {
    ObjectNode node = (ObjectNode) ReportJson.tree(week);
    node.remove("chart");
    node.remove("bins");
    node.remove("trend");
    node.remove("lanes");
    return node;
  }

  private FilmWeek film(ReportWeek week, String line, String structure) {
    Optional<FilmWeek> film =
        desk.preview(week, new Scope(line, structure)).films().stream().findFirst();
    return film.orElseThrow(
        () ->
            new NoSuchElementException(
                line + " made no " + structure + " in " + week.word() + " nor in the week before"));
  }

  private ReportWeek week(Context ctx, String name) {
    String word = Requests.textOr(ctx, name, "");
    return word.isEmpty()
        ? ReportWeek.of(plant.clock().instant(), plant.zone()).minus(1)
        : ReportWeek.parse(word, plant.zone());
  }

  private static Scope scope(Context ctx) {
    return new Scope(Requests.textOr(ctx, "line", ""), Requests.textOr(ctx, "structure", ""));
  }
}
