package dev.filmward.web;

import static dev.filmward.people.Permission.ADMINISTER;
import static dev.filmward.people.Permission.ANYBODY;
import static dev.filmward.people.Permission.AUDIT;
import static dev.filmward.people.Permission.DECIDE;
import static dev.filmward.people.Permission.DISPOSE;
import static dev.filmward.people.Permission.READ;
import static dev.filmward.people.Permission.SEND_FILES;
import static dev.filmward.people.Permission.TELL_LINE_STATE;
import static dev.filmward.people.Permission.TEND_ALARMS;

import dev.filmward.pipeline.Passwords;
import dev.filmward.pipeline.Plant;
import dev.filmward.pipeline.TellingDesk;
import dev.filmward.telling.Post;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.staticfiles.Location;
import io.javalin.json.JavalinJackson;
import io.javalin.util.JavalinException;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.jetty.server.AbstractConnector;
import org.eclipse.jetty.server.Connector;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Serves the pages and their JSON. Bound to one address; thread-safe. Stopping closes the event
 * streams first, so that it is quick.
 */
public final class WebServer implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(WebServer.class);
  private static final long STOP_TIMEOUT_MS = 3_000;
  private static final long IDLE_AT_STOP_MS = 50;

  private final Javalin javalin;
  private final EventStream events;

  private final Operation operation;
  private final List<Routes.Known> known;

  private WebServer(
      Javalin javalin, EventStream events, Operation operation, List<Routes.Known> known) {
    this.javalin = javalin;
    this.events = events;
    this.operation = operation;
    this.known = List.copyOf(known);
  }

  /**
   * Where to listen, and whether what is shown is a demonstration.
   *
   * @param port 0 for any free one
   */
  public record Options(String host, int port, Purpose purpose, DoorOptions doors) {
    /** With doors that are shut. */
    public Options(String host, int port, Purpose purpose) {
      this(host, port, purpose, DoorOptions.SHUT);
    }

    /** Whether only this machine reaches it, with no proxy before it. */
    public boolean isForThisMachineOnly() {
      return Doors.isLoopback(host) && !doors.forwarding().isUsed();
    }

    /** What the server is for. */
    public enum Purpose {
      PLANT,
      DEMONSTRATION
    }
  }

  /** Starts serving a plant. */
  public static WebServer start(Plant plant, Options options) {
    EventStream events = new EventStream(plant.clock(), plant.zone());
    plant.listen(events::publish);
    Reception reception = Reception.of(plant, events, options.doors());
    Operation operation = Operation.of(plant, events);
    List<Routes.Known> known = new ArrayList<>();
    Javalin javalin =
        Javalin.create(
            config -> {
              configure(config, options);
              RequestWatch watch = new RequestWatch(operation.meters);
              config.requestLogger.http(watch::end);
              config.routes.before(watch::begin);
              config.routes.before(new Doors(options.host(), options.doors().forwarding())::check);
              config.routes.beforeMatched(reception.gate()::check);
              Routes routes = new Routes(config.routes, new WorkResource());
              routes(routes, plant, reception, options);
              doors(routes, plant, reception, options.doors());
              operation(routes, plant, operation);
              known.addAll(routes.known());
              ErrorReplies.map(config.routes);
            });
    javalin.start();
    return new WebServer(javalin, events, operation, known);
  }

  /** What tells machines how the server is. */
  private record Operation(Meters meters, HealthResource health) implements AutoCloseable {
    static Operation of(Plant plant, EventStream events) {
      Meters meters = new Meters(plant, events);
      plant.listen(meters::hear);
      return new Operation(meters, new HealthResource(plant));
    }

    @Override
    public void close() {
      health.close();
      meters.close();
    }
  }

  /** Every route there is. */
  List<Routes.Known> routes() {
    return known;
  }

  public int port() {
    return javalin.port();
  }

  @Override
  public void close() {
    events.close();
    letIdleConnectionsGo();
    try {
      javalin.stop();
    } catch (JavalinException e) {
      LOG.warn("A connection did not end by itself and was broken off", e);
    }
    operation.close();
  }

  /** Browsers hold connections open for later; stopping would wait a second for each of them. */
  private void letIdleConnectionsGo() {
    for (Connector connector : javalin.jettyServer().server().getConnectors()) {
      if (connector instanceof AbstractConnector idling) {
        idling.setShutdownIdleTimeout(IDLE_AT_STOP_MS);
      }
    }
  }

  private static void configure(JavalinConfig config, Options options) {
    config.startup.showJavalinBanner = false;
    config.jetty.host = options.host();
    config.jetty.port = options.port();
    options
        .doors()
        .tls()
        .ifPresent(key -> config.jetty.addConnector((s, http) -> key.connector(s, http, options)));
    config.jetty.modifyServer(server -> server.setStopTimeout(STOP_TIMEOUT_MS));
    config.http.generateEtags = true;
    config.http.prefer405over404 = true;
    config.jsonMapper(new JavalinJackson(Wire.mapper(), false));
    config.staticFiles.add("/web", Location.CLASSPATH);
    config.staticFiles.enableWebjars();
  }

  private static void routes(Routes routes, Plant plant, Reception reception, Options options) {
    Answers answers = new Answers();
    BoardResource board = new BoardResource(plant, options.purpose(), answers);
    SeriesResource series = new SeriesResource(plant, answers);
    AlarmResource alarms = new AlarmResource(plant, answers);
    HoldResource holds = new HoldResource(plant);
    LineResource lines = new LineResource(plant);
    CareResource care = new CareResource(plant, alarms);
    CauseResource causes = new CauseResource(plant);
    DiagnosisResource diagnoses = new DiagnosisResource(plant);
    SignatureResource signatures = new SignatureResource(plant);
    RollResource rolls = new RollResource(plant);
    LimitsResource limits = new LimitsResource(plant);
    TestsResource tests = new TestsResource(plant);
    ScreeningResource screening = new ScreeningResource(plant);
    FileResource files = new FileResource(plant);
    QuarantineResource quarantine = new QuarantineResource(plant);
    CorrectionResource corrections = new CorrectionResource(plant);
    MappingResource mappings = new MappingResource(plant);
    StructureResource structures = new StructureResource(plant);
    TellingResource telling =
        new TellingResource(
            plant, new TellingDesk(plant, Post.real(), new Passwords(System.getenv())));
    ShiftResource shifts = new ShiftResource(plant);
    HandoverResource handover = new HandoverResource(plant);
    NoteResource notes = new NoteResource(plant);
    FiguresResource figures = new FiguresResource(plant);
    GaugeCheckResource gaugeCheck = new GaugeCheckResource(plant);
    StudyResource studies = new StudyResource(plant);
    gaugeRoom(routes, plant);
    routes.works(READ);
    reports(routes, plant);

    routes.get("/api/v1/board", READ, board::get);
    routes.get("/api/v1/series", READ, series::get);
    routes.get("/api/v1/series/look", READ, series::look);
    routes.get("/api/v1/series/comparison", READ, series::compare);
    routes.get("/api/v1/alarms", READ, alarms::list);
    routes.get("/api/v1/alarms/search", READ, alarms::search);
    routes.get("/api/v1/alarms/{id}", READ, alarms::get);
    routes.post("/api/v1/alarms/{id}/acknowledge", TEND_ALARMS, alarms::acknowledge);
    routes.post("/api/v1/alarms/{id}/shelve", TEND_ALARMS, holds::shelve);
    routes.get("/api/v1/holds", READ, holds::list);
    routes.post("/api/v1/shelves/{id}/end", TEND_ALARMS, holds::endShelf);
    routes.post("/api/v1/out-of-service", DECIDE, holds::takeOut);
    routes.post("/api/v1/out-of-service/{id}/end", DECIDE, holds::putBack);
    routes.get("/api/v1/lines/{line}/modes", READ, lines::modes);
    routes.get("/api/v1/lines/{line}/events", READ, lines::events);
    routes.post("/api/v1/lines/{line}/mode", TELL_LINE_STATE, lines::say);
    routes.post("/api/v1/alarms/{id}/finding", TEND_ALARMS, care::explain);
    routes.post("/api/v1/alarms/{id}/comments", TEND_ALARMS, care::comment);
    routes.post("/api/v1/alarms/{id}/owner", TEND_ALARMS, care::handOn);
    routes.post("/api/v1/alarms/{id}/checks", TEND_ALARMS, care::check);
    routes.post("/api/v1/alarms/{id}/reopen", TEND_ALARMS, care::reopen);
    routes.get("/api/v1/alarms/{id}/rolls", READ, rolls::ofAlarm);
    routes.get("/api/v1/alarms/{id}/diagnosis", READ, diagnoses::ofAlarm);
    routes.get("/api/v1/diagnosis/hit-rate", READ, diagnoses::hitRate);
    routes.get("/api/v1/lines/{line}/log", READ, diagnoses::log);
    routes.post("/api/v1/lines/{line}/log", TEND_ALARMS, diagnoses::write);
    routes.post("/api/v1/line-log/{id}/withdraw", TEND_ALARMS, diagnoses::withdraw);
    routes.get("/api/v1/signatures", READ, signatures::get);
    routes.post("/api/v1/signatures", DECIDE, signatures::keep);
    routes.get("/api/v1/rolls", READ, rolls::list);
    routes.post("/api/v1/rolls/hold", TEND_ALARMS, rolls::hold);
    routes.post("/api/v1/rolls/disposition", DISPOSE, rolls::dispose);
    routes.get("/api/v1/causes", READ, causes::causes);
    routes.post("/api/v1/causes", DECIDE, causes::keepCauses);
    routes.get("/api/v1/checks", READ, causes::checks);
    routes.post("/api/v1/checks", DECIDE, causes::keepChecks);
    routes.get("/api/v1/lines/{line}/limits", READ, limits::list);
    routes.post("/api/v1/limits/proposal", DECIDE, limits::propose);
    routes.post("/api/v1/limits/freeze", DECIDE, limits::freeze);
    routes.post("/api/v1/limits/state", DECIDE, limits::move);
    routes.get("/api/v1/lines/{line}/tests", READ, tests::get);
    routes.post("/api/v1/tests/price", DECIDE, tests::price);
    routes.post("/api/v1/tests", DECIDE, tests::choose);
    routes.get("/api/v1/screening", READ, screening::list);
    routes.post("/api/v1/screening/{id}/put-back", DECIDE, screening::putBack);
    routes.post("/api/v1/screening/{id}/confirm", TEND_ALARMS, screening::confirm);
    routes.post("/api/v1/screening/{id}/leave-out", DECIDE, screening::leaveOut);
    routes.get("/api/v1/lines/{line}/screening", READ, screening::settings);
    routes.get("/api/v1/lines/{line}/missing", READ, screening::missing);
    routes.post("/api/v1/screening/settings", DECIDE, screening::set);
    routes.get("/api/v1/files", READ, files::list);
    routes.get("/api/v1/files/{id}/quarantine", READ, quarantine::list);
    routes.post("/api/v1/files/{id}/quarantine/mend", SEND_FILES, quarantine::mend);
    routes.get("/api/v1/files/{id}/corrections", READ, corrections::ofFile);
    routes.get("/api/v1/corrections", READ, corrections::list);
    routes.post("/api/v1/files", SEND_FILES, files::upload);
    routes.get("/api/v1/mappings", READ, mappings::list);
    routes.post("/api/v1/mappings", DECIDE, mappings::keep);
    routes.post("/api/v1/mappings/proposal", SEND_FILES, mappings::propose);
    routes.get("/api/v1/structures", READ, structures::list);
    routes.post("/api/v1/structures", DECIDE, structures::keep);
    routes.post("/api/v1/structures/preview", DECIDE, structures::preview);
    routes.post("/api/v1/structures/take-back", DECIDE, structures::takeBack);
    routes.get("/api/v1/telling/rules", ADMINISTER, telling::rules);
    routes.post("/api/v1/telling/rules", ADMINISTER, telling::keepRule);
    routes.get("/api/v1/telling/settings", ADMINISTER, telling::settings);
    routes.post("/api/v1/telling/settings", ADMINISTER, telling::keepSettings);
    routes.post("/api/v1/telling/test", ADMINISTER, telling::test);
    routes.get("/api/v1/telling/outbox", ADMINISTER, telling::outbox);
    routes.get("/api/v1/shifts", READ, shifts::get);
    routes.post("/api/v1/shifts", DECIDE, shifts::set);
    routes.get("/api/v1/handover", READ, handover::get);
    routes.post("/api/v1/handover/sign", TEND_ALARMS, handover::sign);
    routes.get("/api/v1/handover/notes", READ, notes::search);
    routes.post("/api/v1/handover/notes", TEND_ALARMS, notes::write);
    routes.post("/api/v1/handover/notes/{id}/settle", TEND_ALARMS, notes::settle);
    routes.get("/api/v1/alarm-figures", READ, figures::get);
    routes.get("/api/v1/alarm-figures/spared", READ, figures::spared);
    routes.get("/api/v1/gauge/check", READ, gaugeCheck::check);
    routes.get("/api/v1/gauge/uncertainty", READ, gaugeCheck::uncertainty);
    routes.get("/api/v1/gauge-studies", READ, studies::list);
    routes.post("/api/v1/gauge-studies", DECIDE, studies::plan);
    routes.get("/api/v1/gauge-studies/{id}", READ, studies::get);
    routes.post("/api/v1/gauge-studies/{id}/readings", SEND_FILES, studies::enter);
    routes.post("/api/v1/gauge-studies/{id}/file", SEND_FILES, studies::enterFile);
    routes.post("/api/v1/gauge-studies/{id}/finish", DECIDE, studies::finish);
    routes.post("/api/v1/gauge-studies/{id}/abandon", DECIDE, studies::abandon);
    routes.events(
        "/api/v1/events",
        READ,
        client ->
            reception.events().connect(client, reception.gate().stillMay(client.ctx(), READ)));
  }

  /** What quality sends. */
  private static void reports(Routes routes, Plant plant) {
    ReportResource reports = new ReportResource(plant, version());

    routes.get("/api/v1/reports", READ, reports::list);
    routes.get("/api/v1/reports/week", READ, reports::get);
    routes.get("/api/v1/reports/file", READ, reports::file);
    routes.get("/api/v1/reports/comparison", READ, reports::compare);
    routes.post("/api/v1/reports/issue", DISPOSE, reports::issueNow);
    routes.post("/api/v1/reports/settings", DISPOSE, reports::decide);
    routes.post("/api/v1/tables/workbook", READ, TableResource::workbook);
  }

  private static String version() {
    String version = WebServer.class.getPackage().getImplementationVersion();
    return "Filmward " + (version == null ? "(not packaged)" : version);
  }

  /** What the readings are worth. */
  private static void gaugeRoom(Routes routes, Plant plant) {
    GaugeResource gauges = new GaugeResource(plant);
    CalibrationResource calibrations = new CalibrationResource(plant);

    routes.get("/api/v1/gauges", READ, gauges::list);
    routes.post("/api/v1/gauges", DECIDE, gauges::keep);
    routes.post("/api/v1/gauges/use", DECIDE, gauges::use);
    routes.post("/api/v1/gauges/setting", DECIDE, gauges::set);
    routes.get("/api/v1/calibrations", READ, calibrations::list);
    routes.post("/api/v1/calibrations", DECIDE, calibrations::keep);
    routes.post("/api/v1/calibrations/work-out", DECIDE, calibrations::workOut);
    routes.post("/api/v1/calibrations/preview", DECIDE, calibrations::preview);
    routes.post("/api/v1/calibrations/rescale", DECIDE, calibrations::rescale);
    routes.post("/api/v1/calibrations/take-back", DECIDE, calibrations::takeBack);
    CheckResource checks = new CheckResource(plant);
    routes.get("/api/v1/check-standards", READ, checks::list);
    routes.post("/api/v1/check-standards", DECIDE, checks::keep);
    routes.post("/api/v1/check-standards/{id}/readings", TEND_ALARMS, checks::note);
    routes.post("/api/v1/check-standards/failures/{id}", DECIDE, checks::decide);
  }

  /** Who comes in, and who may do what. */
  private static void doors(Routes routes, Plant plant, Reception reception, DoorOptions options) {
    PeopleJson json = new PeopleJson(plant.zone());
    Welcome welcome = new Welcome(reception, plant.zone());
    SessionResource session = new SessionResource(reception, welcome, options.guests());
    FactorResource factor = new FactorResource(reception, welcome, json);
    PeopleResource people = new PeopleResource(reception, json);
    TokenResource tokens = new TokenResource(reception, plant.zone());

    routes.get("/api/v1/me", ANYBODY, session::me);
    routes.post("/api/v1/me/password", ANYBODY, session::choosePassword);
    routes.post("/api/v1/me/confirm", ANYBODY, session::confirm);
    routes.post("/api/v1/me/second-factor", ANYBODY, factor::offer);
    routes.post("/api/v1/me/second-factor/on", ANYBODY, factor::turnOn);
    routes.post("/api/v1/me/second-factor/off", ANYBODY, factor::turnOff);
    routes.post("/api/v1/session", ANYBODY, session::signIn);
    routes.post("/api/v1/session/guest", ANYBODY, session::beGuest);
    routes.post("/api/v1/session/end", ANYBODY, session::signOut);
    routes.post("/api/v1/session/end-everywhere", ANYBODY, session::signOutEverywhere);
    routes.get("/api/v1/colleagues", TEND_ALARMS, people::colleagues);
    routes.get("/api/v1/people", ADMINISTER, people::list);
    routes.post("/api/v1/people", ADMINISTER, people::add);
    routes.post("/api/v1/people/{id}/role", ADMINISTER, people::give);
    routes.post("/api/v1/people/{id}/disable", ADMINISTER, people::disable);
    routes.post("/api/v1/people/{id}/password", ADMINISTER, people::reset);
    routes.post("/api/v1/people/{id}/second-factor/off", ADMINISTER, factor::takeAway);
    routes.get("/api/v1/tokens", ADMINISTER, tokens::list);
    routes.post("/api/v1/tokens", ADMINISTER, tokens::add);
    routes.post("/api/v1/tokens/{id}/revoke", ADMINISTER, tokens::revoke);
  }

  private static void operation(Routes routes, Plant plant, Operation operation) {
    routes.get("/health", ANYBODY, operation.health::get);
    routes.get("/metrics", READ, new MetricsResource(operation.meters)::get);
    routes.get("/api/v1/openapi.json", ANYBODY, OpenApi.load()::get);
    routes.get("/api/v1/audit", AUDIT, new AuditResource(plant)::get);
  }
}
