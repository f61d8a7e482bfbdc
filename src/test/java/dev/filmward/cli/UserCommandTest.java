package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.access.FactorDesk;
import dev.filmward.access.PeopleDesk;
import dev.filmward.access.TestCodes;
import dev.filmward.access.TestPeople;
import dev.filmward.people.Person;
import dev.filmward.people.Role;
import dev.filmward.store.Store;
import java.nio.file.Path;
import java.time.Clock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Accounts by command. */
class UserCommandTest {
  private static final String ONCE = "(?s).*one-time password: [a-z2-9]{5}(-[a-z2-9]{5}){3}\\R.*";

  @TempDir private Path folder;

  @Test
  void peopleAreAddedListedGivenRolesAndDisabled() {
    Outcome added = user("add", "Kim Lee", "--role", "engineer");
    assertThat(added.status()).as(added.err()).isZero();
    assertThat(added.out()).startsWith("Kim Lee, engineer, one-time").matches(ONCE);
    user("add", "Jo", "--role", "administrator");
    assertThat(user("role", "kim lee", "quality").out()).startsWith("Kim Lee, quality");
    assertThat(user("disable", "Kim Lee").out()).startsWith("Kim Lee, quality, disabled");
    assertThat(user("list").out().lines())
        .containsExactly("Jo, administrator, one-time", "Kim Lee, quality, disabled");
    assertThat(user("password", "Kim Lee").out()).contains("one-time").matches(ONCE);
  }

  @Test
  void whatCannotBeIsRefusedInWords() {
    user("add", "Jo", "--role", "administrator");
    assertThat(user("add", "jo", "--role", "viewer").err()).contains("already");
    assertThat(user("add", "Kim", "--role", "king").err()).contains("shift-lead");
    assertThat(user("disable", "Nobody here").err()).contains("there are Jo");
    assertThat(user("disable", "Jo").err()).contains("last administrator");
    assertThat(user("factor-off", "Jo").err()).contains("Jo has no second factor");
    assertThat(user("list").out()).startsWith("Jo, administrator");
  }

  @Test
  void aLostSecondFactorIsTakenAway() {
    Clock clock = Clock.systemUTC();
    try (Store held = Store.open(folder)) {
      Person jo = TestPeople.add(held, clock, "Jo", Role.ADMINISTRATOR);
      FactorDesk factors = new FactorDesk(held, clock);
      factors.turnOn(jo, TestCodes.now(factors.offer(jo).letters(), clock));
    }
    assertThat(user("factor-off", "jo").out()).startsWith("Jo, administrator, active");
    try (Store held = Store.open(folder)) {
      Person jo = new PeopleDesk(held, clock).named("Jo").orElseThrow();
      assertThat(jo.hasSecondFactor()).isFalse();
    }
  }

  @Test
  void whileADashboardHoldsTheDataItsPageIsNamed() {
    try (Store held = Store.open(folder)) {
      assertThat(new PeopleDesk(held, Clock.systemUTC()).all()).isEmpty();
      Outcome refused = user("list");
      assertThat(refused.status()).isEqualTo(1);
      assertThat(refused.err()).contains("in use", "People page");
    }
  }

  private Outcome user(String... words) {
    String[] all = new String[words.length + 3];
    all[0] = "user";
    System.arraycopy(words, 0, all, 1, words.length);
    all[all.length - 2] = "--data";
    all[all.length - 1] = folder.toString();
    return Outcome.of(all);
  }
}
