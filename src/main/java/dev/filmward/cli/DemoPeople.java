package dev.filmward.cli;

import dev.filmward.access.PeopleDesk;
import dev.filmward.access.PeopleDesk.Invited;
import dev.filmward.people.PersonName;
import dev.filmward.people.Role;
import dev.filmward.pipeline.Plant;
import dev.filmward.web.DoorOptions;
import dev.filmward.web.Reading;
import dev.filmward.web.WebServer.Options;
import dev.filmward.web.WebServer.Options.Purpose;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Invented people of the demonstration, one for each role. On this machine anybody may be one of
 * them by a tap; where others reach the demonstration, they have passwords that are told once.
 */
final class DemoPeople {
  static final String SHIFT_LEAD = "Kim";
  static final String ENGINEER = "Alex";

  private static final String BY = "demo data";
  private static final Map<String, Role> PEOPLE = people();

  private final PeopleDesk desk;
  private final List<Invited> invited = new ArrayList<>();

  DemoPeople(Plant plant) {
    this.desk = new PeopleDesk(plant.store(), plant.clock());
  }

  private static Map<String, Role> people() {
    Map<String, Role> people = new LinkedHashMap<>();
    people.put(SHIFT_LEAD, Role.SHIFT_LEAD);
    people.put(ENGINEER, Role.ENGINEER);
    people.put("Sam", Role.QUALITY);
    people.put("Robin", Role.VIEWER);
    people.put("Jo", Role.ADMINISTRATOR);
    return people;
  }

  /** Adds those who are not there yet, and opens the doors as far as the address allows. */
  DoorOptions doors(String host) {
    DoorOptions open = DoorOptions.SHUT.with(Reading.OPEN);
    boolean isAlone = new Options(host, 0, Purpose.DEMONSTRATION, open).isForThisMachineOnly();
    PEOPLE.forEach((name, role) -> add(new PersonName(name), role, isAlone));
    return isAlone ? open.withGuests(List.copyOf(PEOPLE.keySet())) : open;
  }

  private void add(PersonName name, Role role, boolean isAlone) {
    if (desk.named(name.text()).isPresent()) {
      return;
    }
    if (isAlone) {
      desk.addWithoutPassword(name, role, BY);
    } else {
      invited.add(desk.add(name, role, BY));
    }
  }

  void tellPasswords() {
    for (Invited one : invited) {
      System.out.println(
          one.person().name()
              + ", "
              + one.person().role().word()
              + ", one-time password "
              + one.oneTimePassword());
    }
  }
}
