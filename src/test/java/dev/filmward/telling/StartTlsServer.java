package dev.filmward.telling;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import javax.net.ssl.SSLSocket;

/** A mail server on this machine that takes one message, after STARTTLS (RFC 3207). */
final class StartTlsServer implements AutoCloseable {
  private final ServerSocket listening = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
  private final List<String> inTheClear = new CopyOnWriteArrayList<>();
  private final List<String> encrypted = new CopyOnWriteArrayList<>();
  private final OwnCertificate certificate;
  private final Thread talk = new Thread(this::converse);

  StartTlsServer(OwnCertificate certificate) throws IOException {
    this.certificate = certificate;
    talk.start();
  }

  int port() {
    return listening.getLocalPort();
  }

  List<String> inTheClear() {
    return inTheClear;
  }

  List<String> encrypted() {
    return encrypted;
  }

  @Override
  public void close() throws IOException {
    listening.close();
  }

  private void converse() {
    try (Socket socket = listening.accept()) {
      say(socket, "220 here");
      listen(socket, inTheClear, "250-here\r\n250 STARTTLS", "STARTTLS");
      SSLSocket secure =
          (SSLSocket) certificate.context().getSocketFactory().createSocket(socket, null, true);
      secure.setUseClientMode(false);
      listen(secure, encrypted, "250-here\r\n250 AUTH PLAIN", "QUIT");
    } catch (IOException e) {
      encrypted.add("broke off: " + e);
    }
  }

  private static void listen(Socket socket, List<String> heard, String offer, String last)
      throws IOException {
    BufferedReader in =
        new BufferedReader(
            new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII), 1);
    boolean isData = false;
    for (String line = in.readLine(); line != null; line = in.readLine()) {
      heard.add(line);
      if (line.startsWith("EHLO")) {
        say(socket, offer);
      } else if (line.startsWith("AUTH")) {
        say(socket, "235 welcome");
      } else if (line.equals("DATA")) {
        isData = true;
        say(socket, "354 go on");
      } else if (!isData || line.equals(".")) {
        isData = false;
        say(socket, line.equals("STARTTLS") ? "220 go on" : "250 good");
      }
      if (line.equals(last)) {
        return;
      }
    }
  }

  private static void say(Socket socket, String words) throws IOException {
    socket.getOutputStream().write((words + "\r\n").getBytes(StandardCharsets.US_ASCII));
    socket.getOutputStream().flush();
  }
}
