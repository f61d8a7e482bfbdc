package dev.filmward.web;

import java.nio.file.Path;
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
