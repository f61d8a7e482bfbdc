package dev.filmward.cli;

import dev.filmward.access.PeopleDesk;
import dev.filmward.pipeline.Plant;
import dev.filmward.web.WebServer.Options;

/** What whoever starts a server is told about its doors. */
final class FirstStart {
  private FirstStart() {}

  /** Where nobody has an account yet, one is made, so that somebody can let the others in. */
  static void inviteAdministrator(Plant plant) {
    new PeopleDesk(plant.store(), plant.clock())
        .first()
        .ifPresent(
            invited -> {
              System.out.println(
                  "Nobody has an account yet. Sign in as "
                      + invited.person().name()
                      + " with the one-time password "
                      + invited.oneTimePassword());
              System.out.println(
                  "Choose your own password then, and add people on the People page. It is shown"
                      + " this once and ends in "
                      + PeopleDesk.ONE_TIME.toDays()
                      + " days.");
            });
  }

  /** Passwords must not cross a network in the clear without anybody knowing. */
  static void warnWhereOpen(Options options) {
    if (!options.isForThisMachineOnly()
        && options.doors().tls().isEmpty()
        && !options.doors().forwarding().isUsed()) {
      System.err.println(
          "WARNING: Filmward listens on "
              + options.host()
              + " without TLS. Passwords and what people do cross the network in the clear. Give"
              + " --tls-keystore, or put a proxy with TLS before it and start with --behind-proxy.");
    }
  }
}
