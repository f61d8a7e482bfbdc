package dev.filmward.web;

import io.javalin.http.Context;
import java.util.Locale;

/** The meters as text: OpenMetrics where that is asked for, else the plain form before it. */
final class MetricsResource {
  private static final String ASKED_FOR = "application/openmetrics-text";
  private static final String OPEN_METRICS = ASKED_FOR + "; version=1.0.0; charset=utf-8";
  private static final String PLAIN = "text/plain; version=0.0.4; charset=utf-8";

  private final Meters meters;

  MetricsResource(Meters meters) {
    this.meters = meters;
  }

  void get(Context ctx) {
    String accepted = ctx.header("Accept");
    boolean isOpen = accepted != null && accepted.toLowerCase(Locale.ROOT).contains(ASKED_FOR);
    String type = isOpen ? OPEN_METRICS : PLAIN;
    ctx.header("Cache-Control", "no-store").contentType(type).result(meters.text(type));
  }
}
