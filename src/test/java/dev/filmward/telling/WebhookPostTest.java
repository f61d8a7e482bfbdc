package dev.filmward.telling;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import dev.filmward.telling.Sent.Outcome;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Messages reach a real web server on this machine, or what kept them is said in words. */
class WebhookPostTest {
  private static final Message MESSAGE = new Message("key-1", "Alarm", "{\"title\":\"Barriär\"}");

  private record Request(String method, Headers headers, String body) {}

  private final WebhookPost post = new WebhookPost();
  private final List<Request> seen = Collections.synchronizedList(new ArrayList<>());
  private final CountDownLatch held = new CountDownLatch(1);
  private HttpServer server;

  @BeforeEach
  void start() throws Exception {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext("/told/", this::answer);
    server.createContext("/slow", this::wait);
    server.start();
  }

  @AfterEach
  void stop() {
    held.countDown();
    server.stop(0);
  }

  @Test
  void theBodyArrivesWithItsKeyAndItsSignature() {
    Sent sent = post.send(MESSAGE, url("/told/204"), Optional.of(new Secret("shared")));
    assertThat(sent).isEqualTo(new Sent(Outcome.TAKEN, "it answered with status 204"));
    Request request = seen.get(0);
    assertThat(request.method()).isEqualTo("POST");
    assertThat(request.body()).isEqualTo(MESSAGE.body());
    assertThat(request.headers().getFirst("Content-Type")).startsWith("application/json");
    assertThat(request.headers().getFirst("Idempotency-Key")).isEqualTo("key-1");
    assertThat(request.headers().getFirst("X-Filmward-Signature")).startsWith("sha256=");
  }

  @Test
  void withoutASecretThereIsNoSignature() {
    post.send(MESSAGE, url("/told/200"), Optional.empty());
    assertThat(seen.get(0).headers()).doesNotContainKey("X-filmward-signature");
  }

  /** RFC 4231, test case 2. */
  @Test
  void theSignatureIsTheOneOfTheStandard() {
    assertThat(WebhookPost.hmac("what do ya want for nothing?", new Secret("Jefe")))
        .isEqualTo("5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843");
  }

  @ParameterizedTest
  @CsvSource({
    "200, TAKEN",
    "202, TAKEN",
    "400, REFUSED",
    "404, REFUSED",
    "410, REFUSED",
    "408, NO_WAY",
    "429, NO_WAY",
    "500, NO_WAY",
    "503, NO_WAY"
  })
  void theStatusSaysWhetherToTryAgain(int status, Outcome outcome) {
    Sent sent = post.send(MESSAGE, url("/told/" + status), Optional.empty());
    assertThat(sent.outcome()).isEqualTo(outcome);
    assertThat(sent.words()).contains(String.valueOf(status));
  }

  @ParameterizedTest
  @CsvSource({"301", "302", "307", "308"})
  void aRedirectIsNotFollowed(int status) {
    Sent sent = post.send(MESSAGE, url("/told/" + status), Optional.empty());
    assertThat(sent.outcome()).isEqualTo(Outcome.REFUSED);
    assertThat(sent.words()).contains("look elsewhere");
    assertThat(seen).hasSize(1);
  }

  @Test
  void whoDoesNotAnswerInTimeIsNoWay() {
    WebhookPost hasty = new WebhookPost(Duration.ofMillis(300));
    Sent sent = hasty.send(MESSAGE, url("/slow"), Optional.empty());
    assertThat(sent.outcome()).isEqualTo(Outcome.NO_WAY);
    assertThat(sent.words()).contains("did not answer in time");
  }

  @Test
  void whereNobodyListensIsNoWay() throws Exception {
    int free;
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      free = socket.getLocalPort();
    }
    URI nobody = URI.create("http://127.0.0.1:" + free + "/told/200");
    assertThat(post.send(MESSAGE, nobody, Optional.empty()).outcome()).isEqualTo(Outcome.NO_WAY);
  }

  private void answer(HttpExchange exchange) throws IOException {
    String body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
    seen.add(new Request(exchange.getRequestMethod(), exchange.getRequestHeaders(), body));
    String path = exchange.getRequestURI().getPath();
    int status = Integer.parseInt(path.substring("/told/".length()));
    exchange.getResponseHeaders().add("Location", "/told/200");
    exchange.sendResponseHeaders(status, -1);
    exchange.close();
  }

  private void wait(HttpExchange exchange) {
    try {
      held.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    exchange.close();
  }

  private URI url(String path) {
    return URI.create("http://127.0.0.1:" + server.getAddress().getPort() + path);
  }
}
