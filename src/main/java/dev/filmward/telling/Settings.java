package dev.filmward.telling;

import java.net.URI;
import java.util.Optional;

/**
 * How the plant tells people, whoever they are.
 *
 * @param publicAddress where people reach the pages, for links; without a query or a fragment
 */
public record Settings(
    Optional<MailServer> mail, Optional<URI> publicAddress, Escalation escalation) {
  public static final Settings BEGINNING =
      new Settings(Optional.empty(), Optional.empty(), Escalation.USUAL);

  public Settings {
    publicAddress.ifPresent(Settings::check);
  }

  private static void check(URI address) {
    Address.url(address.toString());
    if (address.getQuery() != null || address.getFragment() != null) {
      throw new IllegalArgumentException(
          "the public address is like https://filmward.plant.example, without ? and #");
    }
  }

  /**
   * Reads a public address.
   *
   * @throws IllegalArgumentException where it is none
   */
  public static URI publicAddress(String text) {
    return Address.url(text);
  }

  /** Where an alarm is shown. */
  public Optional<String> link(long alarmId) {
    return publicAddress.map(
        address -> address.toString().replaceAll("/+$", "") + "/alarms.html#" + alarmId);
  }
}
