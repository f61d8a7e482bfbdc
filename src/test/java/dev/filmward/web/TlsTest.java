package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.access.TestPeople;
import dev.filmward.people.Role;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.time.Clock;
import java.util.List;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLHandshakeException;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The server with a key of its own, made by keytool, asked by the client of the JDK. */
class TlsTest {
  private static final String PASSWORD = "only for this test";

  @TempDir private static Path folder;
  private static Path keystore;
  private static ServedPlant served;

  @BeforeAll
  static void serve() throws Exception {
    keystore = folder.resolve("key.p12");
    keytool(
        "-genkeypair -alias filmward -keyalg EC -groupname secp256r1 -validity 2"
            + " -dname CN=filmward.test -ext SAN=dns:localhost,ip:127.0.0.1 -storetype PKCS12");
    DoorOptions doors = DoorOptions.SHUT.with(new TlsKey(keystore, PASSWORD));
    served = ServedPlant.in(folder.resolve("data"), Clock.systemUTC(), doors);
    TestPeople.add(served.plant().store(), served.plant().clock(), "Lee", Role.VIEWER);
  }

  @AfterAll
  static void stop() {
    served.close();
  }

  private static void keytool(String arguments) throws Exception {
    Path tool = Path.of(System.getProperty("java.home"), "bin", "keytool");
    List<String> command = new java.util.ArrayList<>(List.of(tool.toString()));
    command.addAll(List.of(arguments.split(" ")));
    command.addAll(List.of("-keystore", keystore.toString(), "-storepass", PASSWORD));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes());
    assertThat(process.waitFor()).as(said).isZero();
  }

  @ParameterizedTest
  @ValueSource(strings = {"TLSv1.3", "TLSv1.2"})
  void signingInOverTlsSetsACookieForThisHostOnly(String protocol) throws Exception {
    HttpClient client = client(protocol);
    HttpResponse<String> answer = client.send(signIn(), BodyHandlers.ofString());
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    assertThat(answer.sslSession().orElseThrow().getProtocol()).isEqualTo(protocol);
    assertThat(header(answer, "Strict-Transport-Security")).startsWith("max-age=");
    assertThat(header(answer, "Set-Cookie"))
        .matches("__Host-filmward=[^;]+; Path=/; Secure; HttpOnly; SameSite=Strict");
    String cookie = header(answer, "Set-Cookie").split(";")[0];
    HttpRequest board =
        HttpRequest.newBuilder(address("/api/v1/board")).header("Cookie", cookie).build();
    assertThat(client.send(board, BodyHandlers.ofString()).statusCode()).isEqualTo(200);
  }

  private static HttpRequest signIn() {
    String body = "{\"name\": \"Lee\", \"password\": \"" + TestPeople.PASSWORD + "\"}";
    return HttpRequest.newBuilder(address("/api/v1/session"))
        .header("X-Filmward", "1")
        .header("Origin", "https://localhost:" + served.port())
        .POST(BodyPublishers.ofString(body))
        .build();
  }

  @Test
  void anOlderProtocolIsRefused() {
    assertThatThrownBy(() -> client("TLSv1.1").send(signIn(), BodyHandlers.ofString()))
        .isInstanceOfAny(SSLHandshakeException.class, IllegalArgumentException.class);
  }

  @Test
  void plainHttpGetsNothingThere() throws Exception {
    try (var socket = new java.net.Socket("127.0.0.1", served.port())) {
      socket.getOutputStream().write("GET / HTTP/1.1\r\nHost: localhost\r\n\r\n".getBytes());
      socket.setSoTimeout(10_000);
      String answer = new String(socket.getInputStream().readAllBytes());
      assertThat(answer).doesNotContain("200 OK").doesNotContain("<html");
    }
  }

  @Test
  void aWrongPasswordOfTheKeystoreIsSaidBeforeTheStart() {
    assertThat(TlsKey.in(keystore, PASSWORD)).asString().doesNotContain(PASSWORD);
    assertThatThrownBy(() -> TlsKey.in(keystore, "another"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("password right?")
        .hasMessageNotContaining("another");
  }

  private static URI address(String path) {
    return URI.create("https://localhost:" + served.port() + path);
  }

  private static String header(HttpResponse<String> answer, String name) {
    return answer.headers().firstValue(name).orElse("");
  }

  private static HttpClient client(String protocol) throws Exception {
    KeyStore trusted = KeyStore.getInstance("PKCS12");
    try (InputStream in = Files.newInputStream(keystore)) {
      trusted.load(in, PASSWORD.toCharArray());
    }
    KeyStore authorities = KeyStore.getInstance("PKCS12");
    authorities.load(null, null);
    authorities.setCertificateEntry("filmward", trusted.getCertificate("filmward"));
    TrustManagerFactory trust =
        TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
    trust.init(authorities);
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(null, trust.getTrustManagers(), null);
    SSLParameters parameters = new SSLParameters();
    parameters.setProtocols(new String[] {protocol});
    return HttpClient.newBuilder().sslContext(context).sslParameters(parameters).build();
  }
}
