package dev.filmward.telling;

import java.util.Arrays;
import java.util.Locale;

/**
 * The mail server that takes our messages.
 *
 * @param user empty where it asks for none
 * @param from the address that messages come from
 */
public record MailServer(String host, int port, Security security, String user, Address from) {
  private static final int LONGEST = 253;

  /** How the way to the server is kept from others. */
  public enum Security {
    NONE,
    STARTTLS,
    TLS;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    /** The one of that name; {@link IllegalArgumentException} where there is none. */
    public static Security fromWord(String word) {
      return Arrays.stream(values())
          .filter(each -> each.word().equals(word))
          .findFirst()
          .orElseThrow(
              () ->
                  new IllegalArgumentException(
                      "security is none, starttls or tls, not \"" + word + "\""));
    }
  }

  public MailServer {
    if (host.isBlank() || host.length() > LONGEST || !host.matches("[A-Za-z0-9._:\\[\\]-]+")) {
      throw new IllegalArgumentException(
          "the mail server is a name or a number of a machine, like mail.plant.example");
    }
    if (port < 1 || port > 65_535) {
      throw new IllegalArgumentException(
          "the mail server's port is 1 to 65535: usually 25, 587 with starttls, 465 with tls");
    }
    if (user.length() > LONGEST || !user.equals(Plain.line(user))) {
      throw new IllegalArgumentException("the mail server's user is one line");
    }
    if (from.channel() != Channel.EMAIL) {
      throw new IllegalArgumentException("messages come from an e-mail address");
    }
  }
}
