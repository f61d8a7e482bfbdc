package dev.filmward.telling;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLSocketFactory;
import javax.net.ssl.TrustManagerFactory;

/** A certificate for 127.0.0.1, signed by itself and made for one run of the tests. */
record OwnCertificate(Path file) {
  private static final String PASSWORD = "changeit";

  static OwnCertificate make(Path folder) throws IOException, InterruptedException {
    Path file = folder.resolve("server.p12");
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "keytool").toString());
    command.addAll(
        List.of("-genkeypair", "-alias", "server", "-keyalg", "EC", "-dname", "CN=test"));
    command.addAll(List.of("-ext", "SAN=IP:127.0.0.1", "-validity", "2"));
    command.addAll(
        List.of("-storetype", "PKCS12", "-storepass", PASSWORD, "-keystore", file.toString()));
    Process keytool = new ProcessBuilder(command).inheritIO().start();
    if (!keytool.waitFor(1, TimeUnit.MINUTES) || keytool.exitValue() != 0) {
      throw new IllegalStateException("keytool made no certificate");
    }
    return new OwnCertificate(file);
  }

  /** The mail server of the tests reads where its certificate is from the system's properties. */
  void offerToGreenMail() {
    System.setProperty("greenmail.tls.keystore.file", file.toString());
    System.setProperty("greenmail.tls.keystore.password", PASSWORD);
    System.setProperty("greenmail.tls.key.password", PASSWORD);
  }

  /** Trusts this certificate and no other. */
  SSLSocketFactory trusting() {
    return context().getSocketFactory();
  }

  /** For a server that shows it, and for a client that trusts it. */
  SSLContext context() {
    try (InputStream in = Files.newInputStream(file)) {
      KeyStore keys = KeyStore.getInstance("PKCS12");
      keys.load(in, PASSWORD.toCharArray());
      KeyManagerFactory shown = KeyManagerFactory.getInstance("PKIX");
      shown.init(keys, PASSWORD.toCharArray());
      KeyStore trusted = KeyStore.getInstance("PKCS12");
      trusted.load(null, null);
      trusted.setCertificateEntry("server", keys.getCertificate("server"));
      TrustManagerFactory trust = TrustManagerFactory.getInstance("PKIX");
      trust.init(trusted);
      SSLContext context = SSLContext.getInstance("TLS");
      context.init(shown.getKeyManagers(), trust.getTrustManagers(), null);
      return context;
    } catch (IOException | GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }
}
