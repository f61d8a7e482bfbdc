package dev.filmward.web;

import io.javalin.http.Context;

/**
 * How a request came, as far as it can be believed.
 *
 * @param address of the machine that asked
 * @param scheme http or https, as the browser sees it
 * @param host with its port, as the browser named it; empty where it did not
 * @param by whether it came straight or through a proxy that is believed
 */
record Seen(String address, String scheme, String host, By by) {
  private static final String ATTRIBUTE = "filmward.seen";

  enum By {
    ITSELF,
    PROXY
  }

  boolean isSecure() {
    return scheme.equals("https");
  }

  void keepIn(Context ctx) {
    ctx.attribute(ATTRIBUTE, this);
  }

  static Seen in(Context ctx) {
    Seen seen = ctx.attribute(ATTRIBUTE);
    if (seen == null) {
      throw new IllegalStateException("every request passes the doors first");
    }
    return seen;
  }
}
