package dev.filmward.web;

import dev.filmward.people.Secret;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.util.Optional;

/**
 * The cookie that carries a session's secret: no script reads it, no other site sends it, and over
 * TLS no other host of the domain can set it. It ends with the browser.
 */
final class SessionCookie {
  private static final String NAME = "filmward";
  private static final String NAME_WHEN_SECURE = "__Host-filmward";
  private static final int WITH_THE_BROWSER = -1;
  private static final int NOW = 0;

  private SessionCookie() {}

  static Optional<Secret> of(Context ctx) {
    String value = ctx.cookie(name(ctx));
    return value == null || value.isEmpty() ? Optional.empty() : Optional.of(new Secret(value));
  }

  static void set(Context ctx, Secret secret) {
    ctx.cookie(cookie(ctx, secret.text(), WITH_THE_BROWSER));
  }

  static void clear(Context ctx) {
    ctx.cookie(cookie(ctx, "", NOW));
  }

  private static Cookie cookie(Context ctx, String value, int seconds) {
    boolean secure = Seen.in(ctx).isSecure();
    return new Cookie(name(ctx), value, "/", seconds, secure, true, null, SameSite.STRICT);
  }

  private static String name(Context ctx) {
    return Seen.in(ctx).isSecure() ? NAME_WHEN_SECURE : NAME;
  }
}
