package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.access.TestPeople;
import dev.filmward.people.Role;
import dev.filmward.store.AuditTable.Link;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a proxy says counts from the addresses that were named, and from nobody else. */
class ForwardingTest {
  private static final String THROUGH_TLS =
      "X-Forwarded-For: 10.1.2.3\nX-Forwarded-Proto: https\nX-Forwarded-Host: filmward.example\n";
  private static final String OWN_PAGE = "Origin: https://filmward.example\n";

  @TempDir private Path folder;
  private ServedPlant served;

  private void serve(Forwarding believed) throws Exception {
    DoorOptions doors = DoorOptions.SHUT.with(believed);
    served = ServedPlant.in(folder, java.time.Clock.systemUTC(), doors);
    TestPeople.add(served.plant().store(), served.plant().clock(), "Lee", Role.VIEWER);
  }

  @AfterEach
  void stop() {
    if (served != null) {
      served.close();
    }
  }

  @Test
  void throughABelievedProxyTheCookieIsForTlsOnlyAndPagesStayWithTls() throws Exception {
    serve(Forwarding.from(List.of("127.0.0.1", "::1")));
    String answer = signIn("127.0.0.1", THROUGH_TLS + OWN_PAGE);
    assertThat(answer).startsWith("HTTP/1.1 200");
    assertThat(answer)
        .containsPattern(
            "Set-Cookie: __Host-filmward=[^;]+; Path=/; Secure; HttpOnly; SameSite=Strict")
        .contains("Strict-Transport-Security: max-age=31536000");
  }

  @Test
  void thatAnotherOriginIsNotOursIsSeenThroughAProxyToo() throws Exception {
    serve(Forwarding.from(List.of("127.0.0.1")));
    for (String origin : List.of("http://filmward.example", "https://evil.example", "null")) {
      assertThat(signIn("127.0.0.1", THROUGH_TLS + "Origin: " + origin + "\n"))
          .startsWith("HTTP/1.1 403");
    }
  }

  @Test
  void whoeverIsNoBelievedProxyCannotPretend() throws Exception {
    serve(Forwarding.from(List.of("10.9.9.9")));
    String answer = signIn("127.0.0.1", THROUGH_TLS);
    assertThat(answer).startsWith("HTTP/1.1 200");
    assertThat(answer)
        .contains("Set-Cookie: filmward=")
        .doesNotContain("Secure;")
        .doesNotContain("Strict-Transport-Security");
    assertThat(signIn("127.0.0.1", THROUGH_TLS + OWN_PAGE)).startsWith("HTTP/1.1 403");
    assertThat(signIn("filmward.example", THROUGH_TLS)).startsWith("HTTP/1.1 403");
  }

  /** The first entries of the list may be made up by whoever asks; the last one is the proxy's. */
  @ParameterizedTest
  @CsvSource({
    "10.1.2.3, 10.1.2.3",
    "'6.6.6.6, 10.1.2.3', 10.1.2.3",
    "'10.1.2.3, 127.0.0.1', 10.1.2.3",
    "'<script>', 127.0.0.1",
    "2001:db8::7, 2001:db8:0:0:0:0:0:7",
    "'', 127.0.0.1"
  })
  void theAddressIsTheOneThatTheProxySaw(String forwardedFor, String address) throws Exception {
    serve(Forwarding.from(List.of("127.0.0.1")));
    for (int i = 0; i < 5; i++) {
      exchange("127.0.0.1", "X-Forwarded-For: " + forwardedFor + "\n", "Nobody " + i, "wrong");
    }
    List<Link> chain = served.plant().store().read(tables -> tables.audit().newest(1));
    assertThat(chain.get(0).entry().subject()).isEqualTo("address " + address);
  }

  @ParameterizedTest
  @ValueSource(strings = {"localhost", "proxy.example", "10.0.0.0/8", "", "-1"})
  void aProxyIsNamedByItsAddressInFigures(String address) {
    assertThatThrownBy(() -> Forwarding.from(List.of(address)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("10.0.0.7");
  }

  private String signIn(String host, String headers) throws IOException {
    return exchange(host, headers, "Lee", TestPeople.PASSWORD);
  }

  /** Raw, because the client of the JDK does not let a test name another host. */
  private String exchange(String host, String headers, String name, String password)
      throws IOException {
    String body = "{\"name\": \"" + name + "\", \"password\": \"" + password + "\"}";
    String request =
        "POST /api/v1/session HTTP/1.1\nHost: "
            + host
            + "\nX-Filmward: 1\nConnection: close\nContent-Length: "
            + body.length()
            + "\n"
            + headers;
    try (Socket socket = new Socket(InetAddress.getByName("127.0.0.1"), served.port())) {
      String raw = request.replace("\n", "\r\n") + "\r\n" + body;
      socket.getOutputStream().write(raw.getBytes(StandardCharsets.US_ASCII));
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
