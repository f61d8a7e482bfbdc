package dev.filmward.cli;

import dev.filmward.access.FactorDesk;
import dev.filmward.access.PeopleDesk;
import dev.filmward.access.PeopleDesk.Invited;
import dev.filmward.intake.FileRefused;
import dev.filmward.people.Person;
import dev.filmward.people.PersonName;
import dev.filmward.people.Role;
import dev.filmward.store.Store;
import dev.filmward.store.StoreException;
import java.time.Clock;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Accounts, from the machine that holds the data; for the first ones and for emergencies. */
@Command(
    name = "user",
    description =
        "Accounts of people. Only while no dashboard runs on these data; else use its People page.",
    mixinStandardHelpOptions = true)
final class UserCommand {
  @Mixin private DataOption data = new DataOption();

  @Command(
      name = "add",
      description = "Adds a person and prints a password for the first sign-in.",
      mixinStandardHelpOptions = true)
  int add(
      @Parameters(paramLabel = "NAME", description = "The person's own name.") String name,
      @Option(
              names = "--role",
              paramLabel = "ROLE",
              required = true,
              description = "viewer, shift-lead, engineer, quality or administrator.")
          String role) {
    return with(desk -> tell(desk.add(new PersonName(name), Role.fromWord(role), by())));
  }

  @Command(
      name = "list",
      description = "Lists all people with role and standing.",
      mixinStandardHelpOptions = true)
  int list() {
    return with(desk -> desk.all().forEach(UserCommand::tell));
  }

  @Command(
      name = "disable",
      description = "Lets a person in no more. A new password lets the person in again.",
      mixinStandardHelpOptions = true)
  int disable(@Parameters(paramLabel = "NAME") String name) {
    return with(desk -> tell(desk.disable(find(desk, name).id(), by())));
  }

  @Command(
      name = "password",
      description = "Gives a person a new password for one sign-in, and prints it.",
      mixinStandardHelpOptions = true)
  int password(@Parameters(paramLabel = "NAME") String name) {
    return with(desk -> tell(desk.reset(find(desk, name).id(), by())));
  }

  @Command(
      name = "role",
      description = "Gives a person another role.",
      mixinStandardHelpOptions = true)
  int role(
      @Parameters(paramLabel = "NAME") String name, @Parameters(paramLabel = "ROLE") String role) {
    return with(desk -> tell(desk.give(find(desk, name).id(), Role.fromWord(role), by())));
  }

  @Command(
      name = "factor-off",
      description = "Takes a person's second factor away, after a lost phone.",
      mixinStandardHelpOptions = true)
  int factorOff(@Parameters(paramLabel = "NAME") String name) {
    return with(
        (desk, store) ->
            tell(new FactorDesk(store, Clock.systemUTC()).end(find(desk, name).id(), by())));
  }

  private interface Work {
    void on(PeopleDesk desk) throws FileRefused;
  }

  private interface StoreWork {
    void on(PeopleDesk desk, Store store) throws FileRefused;
  }

  private int with(Work work) {
    return with((desk, store) -> work.on(desk));
  }

  private int with(StoreWork work) {
    try (Store store = open()) {
      work.on(new PeopleDesk(store, Clock.systemUTC()), store);
      return ExitStatus.DONE;
    } catch (FileRefused | IllegalArgumentException e) {
      System.err.println(e.getMessage());
      return ExitStatus.REFUSED;
    }
  }

  private Store open() {
    try {
      return data.open();
    } catch (StoreException e) {
      throw new StoreException(
          e.getMessage() + " While a dashboard runs on these data, use its People page.", e);
    }
  }

  private static Person find(PeopleDesk desk, String name) throws FileRefused {
    List<String> names = desk.all().stream().map(Person::name).toList();
    return desk.named(name)
        .orElseThrow(
            () ->
                new FileRefused(
                    "There is no \"" + name + "\"; there are " + String.join(", ", names) + "."));
  }

  private static void tell(Person person) {
    System.out.println(
        person.name() + ", " + person.role().word() + ", " + person.standing().word());
  }

  private static void tell(Invited invited) {
    tell(invited.person());
    System.out.println("one-time password: " + invited.oneTimePassword());
    System.err.println(
        "It is shown this once, must be changed at the first sign-in, and ends in "
            + PeopleDesk.ONE_TIME.toDays()
            + " days.");
  }

  /** Whoever sits at the machine. */
  private static String by() {
    return "command line, " + System.getProperty("user.name", "not named");
  }
}
