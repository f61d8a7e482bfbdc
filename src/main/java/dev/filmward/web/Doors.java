package dev.filmward.web;

import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import io.javalin.http.HandlerType;
import java.net.URI;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What every request passes: headers that keep a browser from running or framing anything foreign,
 * and two checks that keep foreign pages from acting through a browser in the plant: what changes
 * something must carry a header that only our pages send, and must come from our own origin. A
 * server on the loopback address answers to loopback names only. Thread-safe.
 */
final class Doors {
  private static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "[::1]");
  private static final String POLICY =
      "default-src 'self'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
          + " connect-src 'self'; object-src 'none'; base-uri 'none'; frame-ancestors 'none';"
          + " form-action 'self'";

  private final boolean loopbackOnly;

  Doors(String boundTo) {
    this.loopbackOnly = LOOPBACK.contains(boundTo);
  }

  void check(Context ctx) {
    ctx.header("Content-Security-Policy", POLICY);
    ctx.header("X-Content-Type-Options", "nosniff");
    ctx.header("Referrer-Policy", "no-referrer");
    ctx.header("Cross-Origin-Opener-Policy", "same-origin");
    if (ctx.path().startsWith("/api/")) {
      ctx.header("Cache-Control", "no-store");
    }
    if (loopbackOnly && !LOOPBACK.contains(hostName(ctx.header("Host")))) {
      throw new ForbiddenResponse("this server answers to localhost only");
    }
    if (changesSomething(ctx.method())) {
      checkOrigin(ctx);
    }
  }

  private static boolean changesSomething(HandlerType method) {
    return !(method.equals(HandlerType.GET)
        || method.equals(HandlerType.HEAD)
        || method.equals(HandlerType.OPTIONS));
  }

  private static void checkOrigin(Context ctx) {
    if (!"1".equals(ctx.header("X-Filmward"))) {
      throw new ForbiddenResponse("a change needs the header X-Filmward: 1");
    }
    String origin = ctx.header("Origin");
    String host = ctx.header("Host");
    if (origin != null && (host == null || !host.equals(authority(origin)))) {
      throw new ForbiddenResponse("a change must come from Filmward's own pages");
    }
  }

  private static @Nullable String authority(String origin) {
    try {
      return URI.create(origin).getRawAuthority();
    } catch (IllegalArgumentException e) {
      return null;
    }
  }

  private static String hostName(@Nullable String host) {
    if (host == null) {
      return "";
    }
    int port = host.lastIndexOf(':');
    boolean hasPort = port > host.lastIndexOf(']');
    return (hasPort ? host.substring(0, port) : host).toLowerCase(Locale.ROOT);
  }
}
