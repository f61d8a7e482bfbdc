package dev.filmward.telling;

import static org.assertj.core.api.Assertions.assertThat;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import dev.filmward.telling.MailServer.Security;
import dev.filmward.telling.Rule.Recipient;
import dev.filmward.telling.Sent.Outcome;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import jakarta.mail.internet.MimeUtility;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Messages reach a real mail server on this machine, or what kept them is said in words. */
class SmtpPostTest {
  private static final Recipient KIM =
      new Recipient("Kim Bergström", Address.email("kim@plant.example"), Optional.empty());
  private static final Optional<Secret> PASSWORD = Optional.of(new Secret("open sesame"));
  private static final Message MESSAGE =
      new Message("key-1", "Alarm: Barriär: thinner than usual", "Line:  Blown 1\nGrüße\n");

  @TempDir private static Path folder;
  private static OwnCertificate certificate;
  private SmtpPost post;
  private GreenMail server;

  @BeforeAll
  static void makeCertificate() throws Exception {
    certificate = OwnCertificate.make(folder);
    certificate.offerToGreenMail();
  }

  @BeforeEach
  void trustIt() {
    post = new SmtpPost(Optional.of(certificate.trusting()));
  }

  @AfterEach
  void stop() {
    if (server != null) {
      server.stop();
    }
  }

  @Test
  void aMessageArrivesAsPlainTextWithItsKeyAsItsId() throws Exception {
    MailServer plain = start(ServerSetup.PROTOCOL_SMTP, Security.NONE, "");
    Sent sent = post.send(MESSAGE, KIM, plain, Optional.empty());
    assertThat(sent).isEqualTo(new Sent(Outcome.TAKEN, "the mail server took it"));
    MimeMessage mail = only();
    assertThat(mail.getSubject()).isEqualTo(MESSAGE.subject());
    assertThat(mail.getMessageID()).isEqualTo("<key-1@filmward.example>");
    assertThat(mail.getFrom()[0]).hasToString("Filmward <alarms@filmward.example>");
    assertThat(mail.getContentType()).startsWith("text/plain").containsIgnoringCase("utf-8");
    assertThat(mail.getContent().toString().lines()).containsExactly("Line:  Blown 1", "Grüße");
    assertThat(mail.getHeader("Auto-Submitted")).containsExactly("auto-generated");
  }

  @Test
  void aFileGoesWithTheWords() throws Exception {
    MailServer plain = start(ServerSetup.PROTOCOL_SMTP, Security.NONE, "");
    byte[] bytes = new byte[70_000];
    new Random(1).nextBytes(bytes);
    Attachment file = new Attachment("report-ü.pdf", "application/pdf", bytes);
    Message message = new Message("key-2", "Report", "Grüße\n", Optional.of(file));
    assertThat(post.send(message, KIM, plain, Optional.empty()).isTaken()).isTrue();
    MimeMultipart parts = (MimeMultipart) only().getContent();
    assertThat(parts.getCount()).isEqualTo(2);
    assertThat(parts.getBodyPart(0).getContent().toString())
        .isEqualToNormalizingNewlines("Grüße\n");
    assertThat(MimeUtility.decodeText(parts.getBodyPart(1).getFileName()))
        .isEqualTo("report-ü.pdf");
    assertThat(parts.getBodyPart(1).getContentType()).startsWith("application/pdf");
    assertThat(parts.getBodyPart(1).getInputStream().readAllBytes()).isEqualTo(bytes);
  }

  @Test
  void theSameMessageSentAgainHasTheSameId() throws Exception {
    MailServer plain = start(ServerSetup.PROTOCOL_SMTP, Security.NONE, "");
    post.send(MESSAGE, KIM, plain, Optional.empty());
    post.send(MESSAGE, KIM, plain, Optional.empty());
    MimeMessage[] both = server.getReceivedMessages();
    assertThat(both).hasSize(2);
    assertThat(both[0].getMessageID()).isEqualTo(both[1].getMessageID());
  }

  @Test
  void aPasswordOpensAServerThatAsksForOne() {
    MailServer tls = start(ServerSetup.PROTOCOL_SMTPS, Security.TLS, "filmward");
    assertThat(post.send(MESSAGE, KIM, tls, PASSWORD))
        .isEqualTo(new Sent(Outcome.TAKEN, "the mail server took it"));
    Sent refused = post.send(MESSAGE, KIM, tls, Optional.of(new Secret("wrong")));
    assertThat(refused.outcome()).isEqualTo(Outcome.NO_WAY);
    assertThat(refused.words()).contains("user and password").doesNotContain("wrong");
  }

  @Test
  void aPasswordWorksWithoutTlsToo() {
    MailServer plain = start(ServerSetup.PROTOCOL_SMTP, Security.NONE, "filmward");
    assertThat(post.send(MESSAGE, KIM, plain, PASSWORD).isTaken()).isTrue();
  }

  @Test
  void nothingIsSentWhereStartTlsIsWantedAndNotOffered() {
    MailServer plain = start(ServerSetup.PROTOCOL_SMTP, Security.NONE, "");
    MailServer wanting =
        new MailServer(plain.host(), plain.port(), Security.STARTTLS, "", plain.from());
    Sent sent = post.send(MESSAGE, KIM, wanting, Optional.empty());
    assertThat(sent.outcome()).isEqualTo(Outcome.NO_WAY);
    assertThat(sent.words()).containsIgnoringCase("starttls");
    assertThat(server.getReceivedMessages()).isEmpty();
  }

  @Test
  void aStrangersCertificateIsNotTrusted() {
    MailServer tls = start(ServerSetup.PROTOCOL_SMTPS, Security.TLS, "");
    Sent sent = new SmtpPost(Optional.empty()).send(MESSAGE, KIM, tls, Optional.empty());
    assertThat(sent.outcome()).isEqualTo(Outcome.NO_WAY);
    assertThat(server.getReceivedMessages()).isEmpty();
  }

  @Test
  void aCertificateForAnotherNameIsNotTrusted() {
    MailServer tls = start(ServerSetup.PROTOCOL_SMTPS, Security.TLS, "");
    MailServer byName = new MailServer("localhost", tls.port(), Security.TLS, "", from());
    Sent sent = post.send(MESSAGE, KIM, byName, Optional.empty());
    assertThat(sent.outcome()).isEqualTo(Outcome.NO_WAY);
    assertThat(server.getReceivedMessages()).isEmpty();
  }

  @Test
  void withStartTlsThePasswordAndTheMessageGoEncrypted() throws Exception {
    try (StartTlsServer offering = new StartTlsServer(certificate)) {
      MailServer startTls =
          new MailServer("127.0.0.1", offering.port(), Security.STARTTLS, "filmward", from());
      assertThat(post.send(MESSAGE, KIM, startTls, PASSWORD))
          .isEqualTo(new Sent(Outcome.TAKEN, "the mail server took it"));
      assertThat(offering.inTheClear()).hasSize(2).first().asString().startsWith("EHLO ");
      assertThat(offering.inTheClear()).last().isEqualTo("STARTTLS");
      assertThat(offering.encrypted())
          .anyMatch(line -> line.startsWith("AUTH"))
          .contains("RCPT TO:<kim@plant.example>", "Message-ID: <key-1@filmward.example>");
    }
  }

  @Test
  void aServerThatIsDownIsNoWayUntilItIsUp() {
    MailServer plain = start(ServerSetup.PROTOCOL_SMTP, Security.NONE, "");
    server.stop();
    assertThat(post.send(MESSAGE, KIM, plain, Optional.empty()))
        .isEqualTo(new Sent(Outcome.NO_WAY, "nothing answers at 127.0.0.1, port " + plain.port()));
    server = new GreenMail(new ServerSetup(plain.port(), plain.host(), "smtp"));
    server.start();
    assertThat(post.send(MESSAGE, KIM, plain, Optional.empty()).isTaken()).isTrue();
  }

  @Test
  void aRecipientThatTheServerRefusesForGoodIsRefusedAndOneItPutsOffIsNot() throws Exception {
    assertThat(answering("550 5.1.1 no such person").outcome()).isEqualTo(Outcome.REFUSED);
    assertThat(answering("550 5.1.1 no such person").words())
        .contains("kim@plant.example")
        .contains("no such person");
    assertThat(answering("451 4.7.1 come back later").outcome()).isEqualTo(Outcome.NO_WAY);
  }

  @Test
  void namesFromFilesCannotAddLinesToTheHead() throws Exception {
    MailServer plain = start(ServerSetup.PROTOCOL_SMTP, Security.NONE, "");
    Message hostile =
        new Message("key-2", "Skin\r\nBcc: all@plant.example\r\n\r\nbody\u2028x", "body\n");
    assertThat(post.send(hostile, KIM, plain, Optional.empty()).isTaken()).isTrue();
    MimeMessage mail = only();
    assertThat(mail.getHeader("Bcc")).isNull();
    assertThat(mail.getSubject()).isEqualTo("Skin  Bcc: all@plant.example    body x");
    assertThat(mail.getAllRecipients()).hasSize(1);
  }

  /** What is said to a server that answers RCPT in a certain way; a conversation of one message. */
  private Sent answering(String toRecipient) throws Exception {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      Thread talk = new Thread(() -> converse(socket, toRecipient));
      talk.start();
      MailServer server =
          new MailServer("127.0.0.1", socket.getLocalPort(), Security.NONE, "", from());
      Sent sent = post.send(MESSAGE, KIM, server, Optional.empty());
      talk.join(5000);
      return sent;
    }
  }

  private static void converse(ServerSocket listening, String toRecipient) {
    try (Socket socket = listening.accept();
        BufferedReader in =
            new BufferedReader(
                new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII))) {
      say(socket, "220 here");
      for (String line = in.readLine(); line != null; line = in.readLine()) {
        say(socket, line.startsWith("RCPT") ? toRecipient : "250 good");
      }
    } catch (IOException e) {
      // the other side has gone
    }
  }

  private static void say(Socket socket, String words) throws IOException {
    socket.getOutputStream().write((words + "\r\n").getBytes(StandardCharsets.US_ASCII));
  }

  private MailServer start(String protocol, Security security, String user) {
    server = new GreenMail(new ServerSetup(0, "127.0.0.1", protocol));
    if (!user.isEmpty()) {
      server.setUser("alarms@filmward.example", user, "open sesame");
      server.getUserManager().setAuthRequired(true);
    }
    server.start();
    int port = security == Security.TLS ? server.getSmtps().getPort() : server.getSmtp().getPort();
    return new MailServer("127.0.0.1", port, security, user, from());
  }

  private static Address from() {
    return Address.email("alarms@filmward.example");
  }

  private MimeMessage only() {
    assertThat(server.getReceivedMessages()).hasSize(1);
    return server.getReceivedMessages()[0];
  }
}
