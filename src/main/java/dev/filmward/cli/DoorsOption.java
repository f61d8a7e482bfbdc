package dev.filmward.cli;

import dev.filmward.access.SessionBook.Expiry;
import dev.filmward.people.Role;
import dev.filmward.web.DoorOptions;
import dev.filmward.web.Forwarding;
import dev.filmward.web.Reading;
import dev.filmward.web.TlsKey;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Spec.Target;

/** How people and machines come in. */
final class DoorsOption {
  private static final String PASSWORD_VARIABLE = "FILMWARD_TLS_PASSWORD";

  @Spec(Target.MIXEE)
  private @Nullable CommandSpec command;

  @Option(
      names = "--open-to-read",
      description =
          "Whoever reaches the server may look at lines, charts and alarms without signing in.")
  private boolean openToRead;

  @Option(
      names = "--idle-hours",
      paramLabel = "H",
      description = "A session ends when nothing was done in it for so long; 9 unless given.")
  private double idleHours = Expiry.A_SHIFT.idle().toHours();

  @Option(
      names = "--session-hours",
      paramLabel = "H",
      description = "A session ends after so long in any case; 12 unless given.")
  private double sessionHours = Expiry.A_SHIFT.atMost().toHours();

  @Option(
      names = "--tls-keystore",
      paramLabel = "FILE",
      description =
          "Speaks TLS, with the key and certificate of a PKCS #12 file; its password stands in the"
              + " variable FILMWARD_TLS_PASSWORD or in --tls-password-file.")
  private @Nullable Path keystore;

  @Option(
      names = "--tls-password-file",
      paramLabel = "FILE",
      description = "A file whose first line is the password of the keystore.")
  private @Nullable Path passwordFile;

  @Option(
      names = "--behind-proxy",
      paramLabel = "ADDR",
      split = ",",
      arity = "0..1",
      fallbackValue = "127.0.0.1,::1",
      description =
          "Believes X-Forwarded-For, -Proto and -Host from these addresses; from this machine's own"
              + " where none is named. Without the option they are believed from nobody.")
  private @Nullable List<String> proxies;

  @Option(
      names = "--codes-for",
      paramLabel = "ROLE",
      split = ",",
      description =
          "People of these roles, such as administrator,quality, do nothing before they have set up"
              + " a second factor. Anybody may have one without the option.")
  private @Nullable List<String> codesFor;

  DoorOptions options() throws IOException {
    try {
      DoorOptions doors =
          DoorOptions.SHUT
              .with(openToRead ? Reading.OPEN : Reading.SIGNED_IN)
              .with(new Expiry(hours(idleHours), hours(sessionHours)))
              .with(proxies == null ? Forwarding.none() : Forwarding.from(proxies))
              .withCodesFor(codesFor == null ? Set.of() : roles(codesFor));
      return keystore == null ? doors : doors.with(TlsKey.in(existing(keystore), password()));
    } catch (IllegalArgumentException e) {
      throw wrongUse(e.getMessage() == null ? e.toString() : e.getMessage());
    }
  }

  private static Set<Role> roles(List<String> words) {
    return words.stream().map(String::strip).map(Role::fromWord).collect(Collectors.toSet());
  }

  private static Duration hours(double hours) {
    return Duration.ofSeconds(Math.round(hours * Duration.ofHours(1).toSeconds()));
  }

  private static Path existing(Path file) {
    if (!Files.isReadable(file)) {
      throw new IllegalArgumentException("--tls-keystore: there is no readable file " + file);
    }
    return file;
  }

  private String password() throws IOException {
    if (passwordFile != null) {
      return Files.readString(passwordFile).lines().findFirst().orElse("");
    }
    String password = System.getenv(PASSWORD_VARIABLE);
    if (password == null) {
      throw new IllegalArgumentException(
          "--tls-keystore needs its password, in "
              + PASSWORD_VARIABLE
              + " or in --tls-password-file");
    }
    return password;
  }

  private RuntimeException wrongUse(String words) {
    return command == null
        ? new IllegalArgumentException(words)
        : new ParameterException(command.commandLine(), words);
  }
}
