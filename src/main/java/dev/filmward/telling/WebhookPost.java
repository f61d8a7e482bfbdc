package dev.filmward.telling;

import java.io.IOException;
import java.io.InputStream;
import java.net.ConnectException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.net.http.HttpTimeoutException;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.time.Duration;
import java.util.HexFormat;
import java.util.Optional;
import java.util.Set;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Posts messages as JSON to web addresses. Redirects are not followed, and what the other side
 * answers is not read beyond its status, so that an address can only be told things. Thread-safe.
 *
 * <p>{@value #SIGNATURE} carries {@code sha256=} and the HMAC-SHA256 of the body's bytes under the
 * shared secret (RFC 2104, in hexadecimal digits); {@value #KEY} is the same for each attempt.
 */
final class WebhookPost {
  static final String SIGNATURE = "X-Filmward-Signature";
  static final String KEY = "Idempotency-Key";

  private static final Duration CONNECT_PATIENCE = Duration.ofSeconds(10);

  /** Too early, too many, or the other side's own trouble: later it may go. */
  private static final Set<Integer> LATER = Set.of(408, 425, 429);

  private final HttpClient client =
      HttpClient.newBuilder()
          .connectTimeout(CONNECT_PATIENCE)
          .followRedirects(HttpClient.Redirect.NEVER)
          .version(HttpClient.Version.HTTP_1_1)
          .build();
  private final Duration patience;

  WebhookPost() {
    this(Duration.ofSeconds(20));
  }

  WebhookPost(Duration patience) {
    this.patience = patience;
  }

  Sent send(Message message, URI url, Optional<Secret> secret) {
    try {
      HttpResponse<InputStream> answer =
          client.send(request(message, url, secret), BodyHandlers.ofInputStream());
      answer.body().close();
      return told(answer.statusCode());
    } catch (HttpTimeoutException e) {
      return Sent.noWay(url.getHost() + " did not answer in time");
    } catch (ConnectException e) {
      return Sent.noWay("nothing answers at " + url.getHost() + said(e));
    } catch (IOException e) {
      return Sent.noWay("the connection to " + url.getHost() + " broke off" + said(e));
    } catch (IllegalArgumentException e) {
      return Sent.refused("nothing can be sent to " + url);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Sent.noWay("broken off, because Filmward stops");
    }
  }

  private HttpRequest request(Message message, URI url, Optional<Secret> secret) {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(url)
            .timeout(patience)
            .header("Content-Type", "application/json; charset=utf-8")
            .header("User-Agent", "Filmward")
            .header(KEY, message.key())
            .POST(BodyPublishers.ofString(message.body()));
    secret.ifPresent(key -> request.header(SIGNATURE, "sha256=" + hmac(message.body(), key)));
    return request.build();
  }

  static String hmac(String body, Secret secret) {
    try {
      Mac mac = Mac.getInstance("HmacSHA256");
      mac.init(new SecretKeySpec(secret.reveal().getBytes(StandardCharsets.UTF_8), "HmacSHA256"));
      return HexFormat.of().formatHex(mac.doFinal(body.getBytes(StandardCharsets.UTF_8)));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every JDK has HmacSHA256", e);
    }
  }

  private static Sent told(int status) {
    String words = "it answered with status " + status;
    if (status >= 200 && status < 300) {
      return Sent.taken(words);
    }
    if (status >= 300 && status < 400) {
      return Sent.refused(words + ", to look elsewhere; give the address where it is to go");
    }
    return status >= 500 || LATER.contains(status) ? Sent.noWay(words) : Sent.refused(words);
  }

  private static String said(IOException e) {
    return e.getMessage() == null ? "" : ": " + e.getMessage();
  }
}
