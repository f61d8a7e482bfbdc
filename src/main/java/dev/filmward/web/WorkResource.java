package dev.filmward.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.pipeline.LongWork;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

/**
 * Requests that somebody waits for. Whoever sends a request with a name that nobody guesses in
 * {@value #HEADER} can ask under that name how far it is, and cancel it. A header and no parameter,
 * since it is no part of what is asked for.
 */
final class WorkResource {
  private static final String HEADER = "X-Filmward-Work";
  private static final Pattern NAME = Pattern.compile("[A-Za-z0-9-]{16,64}");

  private final Map<String, LongWork> running = new ConcurrentHashMap<>();

  /** A handler whose requests can be watched. */
  Handler watched(Handler handler) {
    return ctx -> {
      String name = ctx.header(HEADER);
      if (name == null) {
        handler.handle(ctx);
      } else {
        handle(ctx, handler, checked(name));
      }
    };
  }

  private void handle(Context ctx, Handler handler, String name) throws Exception {
    LongWork work = new LongWork();
    if (running.putIfAbsent(name, work) != null) {
      throw new IllegalArgumentException("X-Filmward-Work names something that goes on already");
    }
    try {
      work.during(
          () -> {
            handler.handle(ctx);
            return ctx;
          });
    } finally {
      running.remove(name);
    }
  }

  private static String checked(String name) {
    if (!NAME.matcher(name).matches()) {
      throw new IllegalArgumentException(
          "X-Filmward-Work is a name of 16 to 64 letters, digits and hyphens that nobody guesses");
    }
    return name;
  }

  void get(Context ctx) {
    ctx.json(json(find(ctx)));
  }

  void cancel(Context ctx) {
    Optional<LongWork> found = find(ctx);
    found.ifPresent(LongWork::cancel);
    ctx.json(json(found));
  }

  private Optional<LongWork> find(Context ctx) {
    return Optional.ofNullable(running.get(ctx.pathParam("id")));
  }

  private static ObjectNode json(Optional<LongWork> work) {
    ObjectNode node = Wire.object().put("running", work.isPresent());
    node.putNull("share");
    work.stream()
        .flatMapToDouble(one -> one.share().stream())
        .forEach(share -> node.put("share", share));
    return node.put("cancelled", work.map(LongWork::isCancelled).orElse(false));
  }
}
