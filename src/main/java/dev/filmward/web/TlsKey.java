package dev.filmward.web;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import org.eclipse.jetty.http.HttpVersion;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.SecureRequestCustomizer;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.SslConnectionFactory;
import org.eclipse.jetty.util.ssl.SslContextFactory;

/**
 * The key and certificate of the server, as a PKCS #12 file; TLS 1.2 and 1.3 with the suites that
 * the JDK holds good.
 */
public record TlsKey(Path keystore, String password) {

  /**
   * A key that can be used.
   *
   * @throws IllegalArgumentException if there is no key in the file, or the password does not open
   *     it
   */
  public static TlsKey in(Path keystore, String password) {
    try (InputStream in = Files.newInputStream(keystore)) {
      KeyStore store = KeyStore.getInstance("PKCS12");
      store.load(in, password.toCharArray());
      if (store.size() == 0) {
        throw new IllegalArgumentException("there is no key in " + keystore);
      }
      return new TlsKey(keystore, password);
    } catch (IOException | GeneralSecurityException e) {
      throw new IllegalArgumentException(
          keystore + " cannot be opened as a PKCS #12 file; is its password right?", e);
    }
  }

  Connector connector(Server server, HttpConfiguration http, WebServer.Options options) {
    SslContextFactory.Server tls = new SslContextFactory.Server();
    tls.setKeyStorePath(keystore.toString());
    tls.setKeyStoreType("PKCS12");
    tls.setKeyStorePassword(password);
    tls.setIncludeProtocols("TLSv1.3", "TLSv1.2");
    HttpConfiguration https = new HttpConfiguration(http);
    // a plant's certificate may name the machine while people type its address
    https.addCustomizer(new SecureRequestCustomizer(false));
    ServerConnector connector =
        new ServerConnector(
            server,
            new SslConnectionFactory(tls, HttpVersion.HTTP_1_1.asString()),
            new HttpConnectionFactory(https));
    connector.setHost(options.host());
    connector.setPort(options.port());
    return connector;
  }

  /** Not the password. */
  @Override
  public String toString() {
    return "TlsKey[" + keystore + "]";
  }
}
