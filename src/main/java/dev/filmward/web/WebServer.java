package dev.filmward.web;

import dev.filmward.pipeline.Plant;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.http.staticfiles.Location;
import io.javalin.json.JavalinJackson;
import io.javalin.util.JavalinException;
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
  private static final long LARGEST_JSON_BODY = 64_000;
  private static final long STOP_TIMEOUT_MS = 3_000;
  private static final long IDLE_AT_STOP_MS = 50;

  private final Javalin javalin;
  private final EventStream events;

  private WebServer(Javalin javalin, EventStream events) {
    this.javalin = javalin;
    this.events = events;
  }

  /**
   * Where to listen, and whether what is shown is a demonstration.
   *
   * @param port 0 for any free one
   */
  public record Options(String host, int port, Purpose purpose) {
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
    Javalin javalin =
        Javalin.create(
            config -> {
              configure(config, options);
              routes(config.routes, plant, events, options);
              ErrorReplies.map(config.routes);
            });
    javalin.start();
    return new WebServer(javalin, events);
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
    config.jetty.modifyServer(server -> server.setStopTimeout(STOP_TIMEOUT_MS));
    config.http.maxRequestSize = LARGEST_JSON_BODY;
    config.http.generateEtags = true;
    config.http.prefer405over404 = true;
    config.jsonMapper(new JavalinJackson(Wire.mapper(), false));
    config.staticFiles.add("/web", Location.CLASSPATH);
    config.staticFiles.enableWebjars();
  }

  private static void routes(
      RoutesConfig routes, Plant plant, EventStream events, Options options) {
    BoardResource board = new BoardResource(plant, options.purpose());
    SeriesResource series = new SeriesResource(plant);
    AlarmResource alarms = new AlarmResource(plant);
    LimitsResource limits = new LimitsResource(plant);
    TestsResource tests = new TestsResource(plant);
    FileResource files = new FileResource(plant);
    QuarantineResource quarantine = new QuarantineResource(plant);
    CorrectionResource corrections = new CorrectionResource(plant);
    MappingResource mappings = new MappingResource(plant);

    routes.before(new Doors(options.host())::check);
    routes.get("/api/board", board::get);
    routes.get("/api/series", series::get);
    routes.get("/api/alarms", alarms::list);
    routes.get("/api/alarms/{id}", alarms::get);
    routes.post("/api/alarms/{id}/acknowledge", alarms::acknowledge);
    routes.post("/api/alarms/{id}/finding", alarms::explain);
    routes.get("/api/causes", alarms::causes);
    routes.get("/api/lines/{line}/limits", limits::list);
    routes.post("/api/limits/proposal", limits::propose);
    routes.post("/api/limits/freeze", limits::freeze);
    routes.post("/api/limits/state", limits::move);
    routes.get("/api/lines/{line}/tests", tests::get);
    routes.post("/api/tests/price", tests::price);
    routes.post("/api/tests", tests::choose);
    routes.get("/api/files", files::list);
    routes.get("/api/files/{id}/quarantine", quarantine::list);
    routes.post("/api/files/{id}/quarantine/mend", quarantine::mend);
    routes.get("/api/files/{id}/corrections", corrections::ofFile);
    routes.get("/api/corrections", corrections::list);
    routes.post("/api/files", files::upload);
    routes.get("/api/mappings", mappings::list);
    routes.post("/api/mappings", mappings::keep);
    routes.post("/api/mappings/proposal", mappings::propose);
    routes.post("/api/structures", files::learnStructures);
    routes.sse("/api/events", events::connect);
  }
}
