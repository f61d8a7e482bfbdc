package dev.filmward.telling;

import jakarta.activation.DataHandler;
import jakarta.mail.AuthenticationFailedException;
import jakarta.mail.Message.RecipientType;
import jakarta.mail.MessagingException;
import jakarta.mail.SendFailedException;
import jakarta.mail.Session;
import jakarta.mail.Transport;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeBodyPart;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import jakarta.mail.util.ByteArrayDataSource;
import java.io.UnsupportedEncodingException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.Date;
import java.util.Optional;
import java.util.Properties;
import javax.net.ssl.SSLSocketFactory;
import org.eclipse.angus.mail.smtp.SMTPAddressFailedException;
import org.eclipse.angus.mail.smtp.SMTPSendFailedException;
import org.eclipse.angus.mail.util.MailConnectException;

/**
 * Hands messages to a mail server (RFC 5321), as plain text. With STARTTLS nothing is sent unless
 * the server offers it, and its certificate must be for its name. Thread-safe.
 */
final class SmtpPost {
  private static final String PATIENCE_MS = "20000";
  private static final int LASTING = 500;

  private final Optional<SSLSocketFactory> trust;

  /**
   * @param trust whose certificates are trusted; those of the virtual machine unless given
   */
  SmtpPost(Optional<SSLSocketFactory> trust) {
    this.trust = trust;
  }

  Sent send(Message message, Rule.Recipient to, MailServer server, Optional<Secret> password) {
    Session session = Session.getInstance(properties(server));
    String protocol = server.security() == MailServer.Security.TLS ? "smtps" : "smtp";
    try (Transport transport = session.getTransport(protocol)) {
      MimeMessage mail = mail(session, message, to, server);
      transport.connect(
          server.host(),
          server.port(),
          server.user().isEmpty() ? null : server.user(),
          server.user().isEmpty() ? null : password.map(Secret::reveal).orElse(""));
      transport.sendMessage(mail, mail.getAllRecipients());
      return Sent.taken("the mail server took it");
    } catch (AuthenticationFailedException e) {
      return Sent.noWay("the mail server does not take the user and password: " + said(e));
    } catch (SendFailedException e) {
      return failed(e, to);
    } catch (MailConnectException e) {
      return Sent.noWay("nothing answers at " + server.host() + ", port " + server.port());
    } catch (MessagingException e) {
      return Sent.noWay("the mail server at " + server.host() + ": " + said(e));
    }
  }

  private Properties properties(MailServer server) {
    boolean tls = server.security() == MailServer.Security.TLS;
    String prefix = tls ? "mail.smtps." : "mail.smtp.";
    Properties properties = new Properties();
    for (String patience : new String[] {"connectiontimeout", "timeout", "writetimeout"}) {
      properties.put(prefix + patience, PATIENCE_MS);
    }
    properties.put(prefix + "auth", String.valueOf(!server.user().isEmpty()));
    boolean startTls = server.security() == MailServer.Security.STARTTLS;
    properties.put(prefix + "starttls.enable", String.valueOf(startTls));
    properties.put(prefix + "starttls.required", String.valueOf(startTls));
    properties.put(prefix + "ssl.checkserveridentity", "true");
    properties.put(prefix + "ssl.protocols", "TLSv1.3 TLSv1.2");
    trust.ifPresent(factory -> properties.put(prefix + "ssl.socketFactory", factory));
    return properties;
  }

  private static MimeMessage mail(
      Session session, Message message, Rule.Recipient to, MailServer server)
      throws MessagingException {
    MimeMessage mail = new Kept(session, id(message, server));
    String utf8 = StandardCharsets.UTF_8.name();
    try {
      mail.setFrom(new InternetAddress(server.from().text(), "Filmward", utf8));
      mail.setRecipient(
          RecipientType.TO, new InternetAddress(to.address().text(), to.name(), utf8));
    } catch (UnsupportedEncodingException e) {
      throw new IllegalStateException("every JDK has UTF-8", e);
    }
    mail.setSubject(message.subject(), utf8);
    if (message.attachment().isPresent()) {
      mail.setContent(parts(message.body(), message.attachment().get()));
    } else {
      mail.setText(message.body(), utf8);
    }
    mail.setSentDate(Date.from(Clock.systemUTC().instant()));
    mail.setHeader("Auto-Submitted", "auto-generated"); // RFC 3834: no holiday replies, please
    return mail;
  }

  private static MimeMultipart parts(String body, Attachment attachment) throws MessagingException {
    MimeBodyPart words = new MimeBodyPart();
    words.setText(body, StandardCharsets.UTF_8.name());
    MimeBodyPart file = new MimeBodyPart();
    file.setDataHandler(
        new DataHandler(new ByteArrayDataSource(attachment.bytes(), attachment.mediaType())));
    file.setFileName(attachment.name());
    return new MimeMultipart(words, file);
  }

  private static String id(Message message, MailServer server) {
    String from = server.from().text();
    return "<" + message.key() + from.substring(from.indexOf('@')) + ">";
  }

  /** Keeps its Message-ID, which the library would make anew for each attempt. */
  private static final class Kept extends MimeMessage {
    private final String id;

    private Kept(Session session, String id) {
      super(session);
      this.id = id;
    }

    @Override
    protected void updateMessageID() throws MessagingException {
      setHeader("Message-ID", id);
    }
  }

  private static Sent failed(SendFailedException e, Rule.Recipient to) {
    for (Exception each = e;
        each != null;
        each = each instanceof MessagingException next ? next.getNextException() : null) {
      if (each instanceof SMTPAddressFailedException refused) {
        String words = "the mail server refuses " + to.address().text() + ": " + said(refused);
        return refused.getReturnCode() >= LASTING ? Sent.refused(words) : Sent.noWay(words);
      }
      if (each instanceof SMTPSendFailedException refused && refused.getReturnCode() >= LASTING) {
        return Sent.refused("the mail server refuses the message: " + said(refused));
      }
    }
    return Sent.noWay("the mail server did not take it: " + said(e));
  }

  private static String said(Exception e) {
    return String.valueOf(e.getMessage());
  }
}
