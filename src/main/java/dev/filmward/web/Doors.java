package dev.filmward.web;

import dev.filmward.web.Seen.By;
import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import io.javalin.http.HandlerType;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * What every request passes: headers that keep a browser from running or framing anything foreign,
 * and two checks that keep foreign pages from acting through a browser in the plant: what changes
 * something must carry a header that only our pages send, and must come from our own origin. A
 * server on the loopback address answers to loopback names only, unless a proxy that is believed
 * asks. Thread-safe.
 */
final class Doors {
  private static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "[::1]");
  private static final String POLICY =
      "default-src 'self'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
          + " connect-src 'self'; object-src 'none'; base-uri 'none'; frame-ancestors 'none';"
          + " form-action 'self'";

  private static final Map<String, String> HEADERS =
      Map.of(
          "Content-Security-Policy", POLICY,
          "X-Content-Type-Options", "nosniff",
          "X-Frame-Options", "DENY",
          "Referrer-Policy", "no-referrer",
          "Cross-Origin-Opener-Policy", "same-origin",
          "Cross-Origin-Resource-Policy", "same-origin",
          "Permissions-Policy", "camera=(), microphone=(), geolocation=(), payment=(), usb=()");
  private static final String A_YEAR = "max-age=31536000";

  private final boolean loopbackOnly;
  private final Forwarding forwarding;

  Doors(String boundTo, Forwarding forwarding) {
    this.loopbackOnly = isLoopback(boundTo);
    this.forwarding = forwarding;
  }

  /** Whether only this machine reaches a server there. */
  static boolean isLoopback(String host) {
    return LOOPBACK.contains(host) || host.equals("::1");
  }

  void check(Context ctx) {
    Seen seen = forwarding.see(ctx);
    seen.keepIn(ctx);
    HEADERS.forEach(ctx::header);
    if (seen.isSecure()) {
      ctx.header("Strict-Transport-Security", A_YEAR);
    }
    if (ctx.path().startsWith("/api/")) {
      ctx.header("Cache-Control", "no-store");
    }
    if (loopbackOnly && seen.by() == By.ITSELF && !LOOPBACK.contains(hostName(seen.host()))) {
      throw new ForbiddenResponse("this server answers to localhost only");
    }
    if (changesSomething(ctx.method())) {
      checkOrigin(ctx, seen);
    }
  }

  private static boolean changesSomething(HandlerType method) {
    return !(method.equals(HandlerType.GET)
        || method.equals(HandlerType.HEAD)
        || method.equals(HandlerType.OPTIONS));
  }

  private static void checkOrigin(Context ctx, Seen seen) {
    if (!"1".equals(ctx.header("X-Filmward"))) {
      throw new ForbiddenResponse("a change needs the header X-Filmward: 1");
    }
    String origin = ctx.header("Origin");
    if (origin != null && !origin.equals(seen.scheme() + "://" + seen.host())) {
      throw new ForbiddenResponse(
          "a change must come from Filmward's own pages",
          Map.of(ErrorReplies.INSTEAD, "behind a proxy, start Filmward with --behind-proxy"));
    }
  }

  private static String hostName(String host) {
    int port = host.lastIndexOf(':');
    boolean hasPort = port > host.lastIndexOf(']');
    return (hasPort ? host.substring(0, port) : host).toLowerCase(Locale.ROOT);
  }
}
