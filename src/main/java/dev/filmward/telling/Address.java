package dev.filmward.telling;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.regex.Pattern;

/**
 * Where messages go: an e-mail address (the usual form of RFC 5321, no quoted local part, letters
 * of ASCII) or a web address with http or https. No control characters, so that no address can add
 * a line to a message's head.
 */
public record Address(Channel channel, String text) {
  private static final int LONGEST_EMAIL = 254;
  private static final int LONGEST_URL = 2000;
  private static final Pattern EMAIL =
      Pattern.compile(
          "[A-Za-z0-9!#$%&'*+/=?^_`{|}~-]+(\\.[A-Za-z0-9!#$%&'*+/=?^_`{|}~-]+)*"
              + "@[A-Za-z0-9]([A-Za-z0-9-]*[A-Za-z0-9])?(\\.[A-Za-z0-9]([A-Za-z0-9-]*[A-Za-z0-9])?)*");

  public Address {
    if (channel == Channel.EMAIL) {
      checkEmail(text);
    } else {
      url(text);
    }
  }

  public static Address email(String text) {
    return new Address(Channel.EMAIL, text);
  }

  /** The address of a webhook. */
  public URI url() {
    return url(text);
  }

  private static void checkEmail(String text) {
    if (text.length() > LONGEST_EMAIL || !EMAIL.matcher(text).matches()) {
      throw new IllegalArgumentException(
          "\"" + Plain.line(text) + "\" is not an e-mail address like name@plant.example");
    }
  }

  /**
   * A web address that messages and links may go to.
   *
   * @throws IllegalArgumentException where it is none, names no host or carries a password
   */
  static URI url(String text) {
    try {
      URI url = new URI(text);
      boolean isWeb = "http".equals(url.getScheme()) || "https".equals(url.getScheme());
      if (text.length() <= LONGEST_URL
          && isWeb
          && url.getHost() != null
          && url.getUserInfo() == null) {
        return url;
      }
    } catch (URISyntaxException e) {
      // said below
    }
    throw new IllegalArgumentException(
        "\"" + Plain.line(text) + "\" is not an address like https://host/path without a password");
  }
}
