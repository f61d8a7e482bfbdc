package dev.filmward.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.access.PeopleDesk.Invited;
import dev.filmward.access.SessionBook.Expiry;
import dev.filmward.access.SignIn.Attempt;
import dev.filmward.people.Permission;
import dev.filmward.people.Person;
import dev.filmward.people.Person.Standing;
import dev.filmward.people.PersonName;
import dev.filmward.people.Role;
import dev.filmward.people.Secret;
import dev.filmward.store.AuditTable.Link;
import dev.filmward.store.Store;
import dev.filmward.store.TestDatabase;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Accounts, sign-ins, sessions and tokens as they are kept, in both kinds of database. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class PeopleDeskTest {
  private static final Instant NOON = Instant.parse("2026-11-20T12:00:00Z");
  private static final String OWN = "nine layers in one film";

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private final MovedClock clock = new MovedClock(NOON);
  private Store store;
  private PeopleDesk desk;
  private SignIn signIn;
  private SessionBook sessions;

  @BeforeEach
  void open() {
    store = database.open(folder);
    desk = new PeopleDesk(store, clock);
    signIn = new SignIn(store, clock);
    sessions = new SessionBook(store, clock, Expiry.A_SHIFT);
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void theFirstAdministratorIsInvitedOnceAndTheInvitationEnds() {
    Invited invited = desk.first().orElseThrow();
    assertThat(invited.person().role()).isEqualTo(Role.ADMINISTRATOR);
    assertThat(invited.person().mustChangePassword()).isTrue();
    assertThat(invited.person().actor().may(Permission.READ)).isFalse();
    assertThat(desk.first()).isEmpty();
    assertThat(enter("administrator ", invited.oneTimePassword())).isPresent();
    clock.pass(Duration.ofDays(7));
    assertThat(enter("Administrator", invited.oneTimePassword())).isEmpty();
  }

  @Test
  void aChosenPasswordTakesThePlaceOfTheOneForOneTime() {
    Invited kim = desk.add(new PersonName("Kim"), Role.ENGINEER, "Jo");
    Person chosen = desk.choosePassword(kim.person(), OWN);
    assertThat(chosen.standing()).isEqualTo(Standing.ACTIVE);
    assertThat(enter("Kim", kim.oneTimePassword())).isEmpty();
    assertThat(enter("KIM", OWN).orElseThrow().actor().may(Permission.DECIDE)).isTrue();
  }

  @Test
  void aNameIsForOnePersonOrOneMachine() {
    desk.add(new PersonName("Kim"), Role.VIEWER, "Jo");
    TokenDesk tokens = new TokenDesk(store, clock);
    tokens.add(new PersonName("Gauge 3"), Set.of(Permission.READ), NOON.plusSeconds(60), "Jo");
    for (String taken : List.of("kim", "gauge 3")) {
      assertThatThrownBy(() -> desk.add(new PersonName(taken), Role.VIEWER, "Jo"))
          .isInstanceOf(IllegalStateException.class)
          .hasMessageContaining("already");
      assertThatThrownBy(
              () ->
                  tokens.add(
                      new PersonName(taken), Set.of(Permission.READ), NOON.plusSeconds(60), "Jo"))
          .isInstanceOf(IllegalStateException.class);
    }
  }

  @Test
  void theLastAdministratorStays() {
    Person jo = desk.addWithoutPassword(new PersonName("Jo"), Role.ADMINISTRATOR, "test");
    Person kim = desk.addWithoutPassword(new PersonName("Kim"), Role.ADMINISTRATOR, "test");
    desk.disable(jo.id(), "Kim");
    assertThatThrownBy(() -> desk.disable(kim.id(), "Kim")).hasMessageContaining("last");
    assertThatThrownBy(() -> desk.give(kim.id(), Role.QUALITY, "Kim"))
        .isInstanceOf(IllegalStateException.class);
    desk.reset(jo.id(), "Kim");
    assertThat(desk.give(kim.id(), Role.QUALITY, "Jo").role()).isEqualTo(Role.QUALITY);
  }

  @Test
  void whoIsDisabledIsOutAtOnceAndComesBackWithANewPasswordOnly() {
    Person kim = TestPeople.add(store, clock, "Kim", Role.SHIFT_LEAD);
    desk.addWithoutPassword(new PersonName("Jo"), Role.ADMINISTRATOR, "test");
    Secret session = sessions.begin(kim, "10.0.0.7");
    desk.disable(kim.id(), "Jo");
    assertThat(sessions.whose(session)).isEmpty();
    assertThat(enter("Kim", TestPeople.PASSWORD)).isEmpty();
    String again = desk.reset(kim.id(), "Jo").oneTimePassword();
    assertThat(sessions.whose(session)).isEmpty();
    assertThat(enter("Kim", TestPeople.PASSWORD)).isEmpty();
    assertThat(enter("Kim", again)).isPresent();
  }

  @Test
  void aSessionOutlivesARestartAndEndsWhenIdleAndInAnyCase() {
    Person kim = desk.addWithoutPassword(new PersonName("Kim"), Role.VIEWER, "test");
    Secret session = sessions.begin(kim, "10.0.0.7");
    store.close();
    open();
    assertThat(sessions.whose(session)).contains(kim);
    clock.pass(Duration.ofHours(8));
    sessions.touch(session);
    clock.pass(Duration.ofMinutes(239));
    assertThat(sessions.whose(session)).isPresent();
    clock.pass(Duration.ofMinutes(1));
    assertThat(sessions.whose(session)).as("12 hours in all").isEmpty();

    Secret idle = sessions.begin(kim, "10.0.0.7");
    clock.pass(Duration.ofHours(9));
    assertThat(sessions.whose(idle)).as("9 hours idle").isEmpty();
    sessions.begin(kim, "10.0.0.7");
    int kept = store.read(tables -> tables.sessions().count(kim.id()));
    assertThat(kept).as("what has ended is cleared away").isEqualTo(1);
  }

  @Test
  void aTokenHoldsUntilItsEndOrUntilItIsRevoked() {
    TokenDesk tokens = new TokenDesk(store, clock);
    var made =
        tokens.add(
            new PersonName("Gauge 3"), Set.of(Permission.SEND_FILES), NOON.plusSeconds(60), "Jo");
    assertThat(tokens.shown(made.secret()).orElseThrow().actor().may(Permission.SEND_FILES))
        .isTrue();
    assertThat(tokens.shown(new Secret(made.secret().text() + "x"))).isEmpty();
    clock.pass(Duration.ofSeconds(60));
    assertThat(tokens.shown(made.secret())).isEmpty();
    var other =
        tokens.add(
            new PersonName("Gauge 4"), Set.of(Permission.READ), NOON.plusSeconds(3600), "Jo");
    tokens.revoke(other.token().id(), "Jo");
    assertThat(tokens.shown(other.secret())).isEmpty();
    assertThatThrownBy(
            () ->
                tokens.add(
                    new PersonName("G"), Set.of(Permission.DECIDE), NOON.plusSeconds(3600), "Jo"))
        .hasMessageContaining("send-files");
  }

  @Test
  void everythingStandsInTheAuditChainAndNoSecretDoesAnywhere() throws Exception {
    Person jo = desk.addWithoutPassword(new PersonName("Jo"), Role.ADMINISTRATOR, "test");
    Invited kim = desk.add(new PersonName("Kim"), Role.VIEWER, "Jo");
    desk.give(kim.person().id(), Role.ENGINEER, "Jo");
    desk.choosePassword(kim.person(), OWN);
    Secret session = sessions.begin(jo, "10.0.0.7");
    var token =
        new TokenDesk(store, clock)
            .add(new PersonName("Gauge 3"), Set.of(Permission.READ), NOON.plusSeconds(60), "Jo");
    new TokenDesk(store, clock).revoke(token.token().id(), "Jo");
    for (int i = 0; i < 5; i++) {
      enter("Kim", "a secret that is wrong");
      clock.pass(Duration.ofMinutes(2));
    }
    desk.disable(kim.person().id(), "Jo");
    List<Link> chain = store.read(tables -> tables.audit().newest(100));
    assertThat(chain)
        .extracting(link -> link.entry().by() + ": " + link.entry().detail())
        .containsExactly(
            "Jo: disabled",
            "Filmward: 5 failures in a row",
            "Jo: revoked",
            "Jo: added for read, until 2026-11-20T12:01:00Z",
            "Kim: own password changed",
            "Jo: role viewer becomes engineer",
            "Jo: added as viewer",
            "test: added as administrator");
    String kept = everything();
    assertThat(kept).contains("argon2id", session.hash(), token.secret().hash());
    assertThat(kept)
        .doesNotContain(kim.oneTimePassword(), OWN, session.text(), token.secret().text())
        .doesNotContain("a secret that is wrong");
  }

  /** All that the tables of people and the chain hold, as text. */
  private String everything() throws Exception {
    StringBuilder text = new StringBuilder();
    try (var connection = database.plainSql(folder);
        var statement = connection.createStatement()) {
      for (String table : List.of("person", "session", "token", "audit")) {
        try (var rows = statement.executeQuery("SELECT * FROM " + table)) {
          while (rows.next()) {
            for (int i = 1; i <= rows.getMetaData().getColumnCount(); i++) {
              text.append(rows.getString(i)).append('\n');
            }
          }
        }
      }
    }
    return text.toString();
  }

  /** Fails after another address did nothing wrong, so that only the account may be slowed. */
  @Test
  void anAccountThatFailsIsSlowedAndLetInAgainLater() {
    TestPeople.add(store, clock, "Kim", Role.VIEWER);
    for (int i = 0; i < 4; i++) {
      assertThat(signIn.check(new Attempt("Kim", "wrong", "10.0.0." + i)).delay()).isZero();
    }
    SignIn.Outcome early = signIn.check(new Attempt("kim", TestPeople.PASSWORD, "10.0.0.9"));
    assertThat(early.person()).isEmpty();
    assertThat(early.delay()).isEqualTo(Duration.ofSeconds(1));
    clock.pass(Duration.ofSeconds(1));
    assertThat(enter("Kim", TestPeople.PASSWORD)).isPresent();
    assertThat(signIn.check(new Attempt("Kim", "wrong", "10.0.0.9")).delay()).isZero();
  }

  @Test
  void anAddressThatTriesManyNamesIsSlowedWhetherTheNamesAreThereOrNot() {
    int lookedAt = 0;
    for (int i = 0; i < 40; i++) {
      if (signIn.check(new Attempt("name " + i, "wrong", "10.0.0.9")).delay().isZero()) {
        lookedAt++;
      }
    }
    assertThat(lookedAt).isEqualTo(16);
    List<Link> chain = store.read(tables -> tables.audit().newest(10));
    assertThat(chain).extracting(link -> link.entry().subject()).containsOnly("address 10.0.0.9");
  }

  private Optional<Person> enter(String name, String password) {
    return signIn.check(new Attempt(name, password, "10.0.0.7")).person();
  }
}
