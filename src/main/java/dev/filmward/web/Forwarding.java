package dev.filmward.web;

import dev.filmward.web.Seen.By;
import io.javalin.http.Context;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Which proxies are believed when they say for whom they ask: X-Forwarded-For, -Proto and -Host
 * count from their addresses only. Immutable.
 */
public final class Forwarding {
  private static final Pattern LITERAL = Pattern.compile("[0-9a-fA-F:.%]+");

  private final Set<String> believed;

  private Forwarding(Set<String> believed) {
    this.believed = believed;
  }

  /** No proxy is believed. */
  public static Forwarding none() {
    return new Forwarding(Set.of());
  }

  /**
   * Proxies at these addresses are believed.
   *
   * @throws IllegalArgumentException if one is no address in figures
   */
  public static Forwarding from(Collection<String> addresses) {
    return new Forwarding(
        addresses.stream().map(Forwarding::address).collect(Collectors.toUnmodifiableSet()));
  }

  public boolean isUsed() {
    return !believed.isEmpty();
  }

  Seen see(Context ctx) {
    String address = address(ctx.req().getRemoteAddr());
    String scheme = ctx.scheme();
    String host = ctx.header("Host") == null ? "" : ctx.header("Host");
    boolean isForwarded = ctx.header("X-Forwarded-For") != null;
    if (!isForwarded || !believed.contains(address)) {
      return new Seen(address, scheme, host, By.ITSELF);
    }
    return new Seen(
        client(ctx.header("X-Forwarded-For"), address),
        "https".equalsIgnoreCase(last(ctx.header("X-Forwarded-Proto"), scheme)) ? "https" : "http",
        last(ctx.header("X-Forwarded-Host"), host),
        By.PROXY);
  }

  /** The last one in the list that is no believed proxy; what stands before it may be made up. */
  private String client(@Nullable String forwardedFor, String proxy) {
    List<String> chain = Arrays.asList((forwardedFor == null ? "" : forwardedFor).split(",", -1));
    Collections.reverse(chain);
    for (String each : chain) {
      String found = each.strip();
      if (!LITERAL.matcher(found).matches()) {
        return proxy;
      }
      if (!believed.contains(address(found))) {
        return address(found);
      }
    }
    return proxy;
  }

  private static String last(@Nullable String list, String other) {
    return list == null ? other : list.substring(list.lastIndexOf(',') + 1).strip();
  }

  /** One form for each address; figures only, so that no name is looked up. */
  private static String address(String text) {
    String bare = text.replace("[", "").replace("]", "");
    if (!LITERAL.matcher(bare).matches()) {
      throw new IllegalArgumentException("\"" + text + "\" is no address such as 10.0.0.7");
    }
    try {
      return InetAddress.getByName(bare).getHostAddress();
    } catch (UnknownHostException e) {
      throw new IllegalArgumentException("\"" + text + "\" is no address such as 10.0.0.7", e);
    }
  }
}
