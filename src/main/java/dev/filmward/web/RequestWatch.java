package dev.filmward.web;

import io.javalin.http.Context;
import io.javalin.router.Endpoint;
import java.time.Duration;
import java.util.HexFormat;
import java.util.Set;
import java.util.concurrent.ThreadLocalRandom;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.slf4j.MDC;
import org.slf4j.spi.LoggingEventBuilder;

/**
 * Notes every request: how long it took, and a line in the log. Every message that a request causes
 * carries its id, which stands in the answer too. Of the request itself only the method and the
 * route's template are noted: no query, no header, no body, so that no secret gets into the log.
 * Thread-safe.
 */
final class RequestWatch {
  /** Under which {@link Gate} leaves the number of the person or token that asks, never a name. */
  static final String PERSON = "filmward.person";

  private static final Logger LOG = LoggerFactory.getLogger(RequestWatch.class);
  private static final String ID = "request";
  private static final double NANOS_IN_MS = 1e6;
  private static final int NOT_FOUND = 404;
  private static final int WRONG_METHOD = 405;
  private static final Set<String> METHODS =
      Set.of("GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS");

  private final Meters meters;

  RequestWatch(Meters meters) {
    this.meters = meters;
  }

  /** Before anything else is done about a request. */
  void begin(Context ctx) {
    String id = HexFormat.of().toHexDigits(ThreadLocalRandom.current().nextLong());
    MDC.put(ID, id);
    ctx.header("X-Request-Id", id);
  }

  /** When all is answered. */
  void end(Context ctx, float ms) {
    String method = METHODS.contains(ctx.method().name()) ? ctx.method().name() : "other";
    int status = ctx.status().getCode();
    String route = route(ctx.endpoints().matchedHttpEndpoint(), status);
    if (!isStream(ctx)) {
      Duration time = Duration.ofNanos((long) (ms * NANOS_IN_MS));
      meters.answered(new Meters.Answered(method, route, status, time));
    }
    LoggingEventBuilder line =
        LOG.atInfo()
            .addKeyValue("method", method)
            .addKeyValue("route", route)
            .addKeyValue("status", status)
            .addKeyValue("ms", ms);
    Object person = ctx.attribute(PERSON);
    if (person != null) {
      line = line.addKeyValue("person", person);
    }
    line.log("{} {} {}", method, route, status);
    MDC.remove(ID);
  }

  private static boolean isStream(Context ctx) {
    String type = ctx.res().getContentType();
    return type != null && type.startsWith("text/event-stream");
  }

  private static String route(@Nullable Endpoint matched, int status) {
    if (matched != null) {
      return matched.path;
    }
    return status == NOT_FOUND || status == WRONG_METHOD ? "none" : "page";
  }
}
