package dev.filmward.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.access.FactorDesk.TurnedOn;
import dev.filmward.access.SessionBook.Expiry;
import dev.filmward.access.SignIn.Attempt;
import dev.filmward.access.SignIn.Outcome;
import dev.filmward.access.SignIn.Wanting;
import dev.filmward.people.Person;
import dev.filmward.people.Role;
import dev.filmward.people.Secret;
import dev.filmward.store.PersonTable.SignedIn;
import dev.filmward.store.Store;
import dev.filmward.store.TestDatabase;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Second factors as they are kept and asked for, in both kinds of database. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class FactorDeskTest {
  private static final Instant NOON = Instant.parse("2026-11-20T12:00:00Z");
  private static final Duration STEP = Duration.ofSeconds(30);

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private final MovedClock clock = new MovedClock(NOON);
  private Store store;
  private FactorDesk factors;
  private SignIn signIn;
  private Person kim;

  @BeforeEach
  void open() {
    store = database.open(folder);
    factors = new FactorDesk(store, clock);
    signIn = new SignIn(store, clock);
    kim = TestPeople.add(store, clock, "Kim", Role.ADMINISTRATOR);
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void whatIsOfferedAsksForNothingUntilACodeOfItCame() {
    OneTimeKey key = factors.offer(kim);
    assertThat(enter(Optional.empty()).person()).isPresent();
    assertThatThrownBy(() -> factors.turnOn(kim, wrong(key)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("clock");
    assertThat(enter(Optional.empty()).person()).isPresent();
    TurnedOn on = factors.turnOn(kim, codeNow(key));
    assertThat(on.person().hasSecondFactor()).isTrue();
    assertThat(on.recoveryCodes()).hasSize(10).doesNotHaveDuplicates();
    assertThat(enter(Optional.empty()).wanting()).isEqualTo(Wanting.CODE);
    assertThatThrownBy(() -> factors.offer(on.person())).hasMessageContaining("on already");
    assertThatThrownBy(() -> factors.turnOn(kim, codeNow(key))).hasMessageContaining("offered");
  }

  @Test
  void aWrongPasswordIsToldAlikeWithAndWithoutASecondFactor() {
    Outcome without = signIn.check(new Attempt("Kim", "wrong", "10.0.0.7"));
    OneTimeKey key = on();
    Outcome with = signIn.check(new Attempt("Kim", "wrong", "10.0.0.7"));
    Outcome withCode =
        signIn.check(new Attempt("Kim", "wrong", Optional.of(codeNow(key)), "10.0.0.8"));
    assertThat(with).isEqualTo(without).isEqualTo(withCode);
    clock.pass(STEP);
    assertThat(enter(Optional.of(codeNow(key))).person()).isPresent();
  }

  @Test
  void aStepIsTakenOnceAndNoneBeforeIt() {
    OneTimeKey key = on();
    Outcome replayed = enter(Optional.of(codeNow(key)));
    assertThat(replayed.person()).as("the code that turned it on").isEmpty();
    assertThat(replayed.wanting()).isEqualTo(Wanting.ANOTHER_CODE);
    clock.pass(STEP.multipliedBy(2));
    String before = key.code(OneTimeKey.stepAt(clock.instant()) - 1);
    String now = codeNow(key);
    assertThat(enter(Optional.of(now)).person()).isPresent();
    assertThat(enter(Optional.of(now)).person()).isEmpty();
    assertThat(enter(Optional.of(before)).person()).as("older than one that was used").isEmpty();
    clock.pass(Duration.ofHours(2));
    assertThat(enter(Optional.of(codeNow(key))).person()).isPresent();
    assertThat(deeds())
        .startsWith("Kim: a code of the second factor came twice; refused")
        .contains("Kim: second factor on");
  }

  @Test
  void eachRecoveryCodeLetsInOnceHoweverItIsTyped() {
    OneTimeKey key = factors.offer(kim);
    List<String> codes = factors.turnOn(kim, codeNow(key)).recoveryCodes();
    String typed = " " + codes.get(0).toUpperCase(java.util.Locale.ROOT).replace("-", " ");
    assertThat(enter(Optional.of(typed)).person()).isPresent();
    assertThat(enter(Optional.of(codes.get(0))).person()).isEmpty();
    assertThat(enter(Optional.of(codes.get(9))).person()).isPresent();
    assertThat(factors.recoveryCodesLeft(kim)).isEqualTo(8);
    assertThat(deeds())
        .contains(
            "Kim: signed in with a recovery code; 9 left",
            "Kim: signed in with a recovery code; 8 left");
  }

  @Test
  void aRecoveryCodeIsOfItsPersonOnly() {
    OneTimeKey key = factors.offer(kim);
    List<String> codes = factors.turnOn(kim, codeNow(key)).recoveryCodes();
    Person lee = TestPeople.add(store, clock, "Lee", Role.VIEWER);
    OneTimeKey other = factors.offer(lee);
    factors.turnOn(lee, codeNow(other));
    Attempt foreign =
        new Attempt("Lee", TestPeople.PASSWORD, Optional.of(codes.get(0)), "10.0.0.7");
    assertThat(signIn.check(foreign).person()).isEmpty();
    assertThat(factors.recoveryCodesLeft(kim)).isEqualTo(10);
  }

  @Test
  void whoeverLosesThePhoneIsFreedByAnAdministratorAndSignedOut() {
    OneTimeKey key = factors.offer(kim);
    List<String> codes = factors.turnOn(kim, codeNow(key)).recoveryCodes();
    SessionBook sessions = new SessionBook(store, clock, Expiry.A_SHIFT);
    Secret session = sessions.begin(kim, "10.0.0.7");
    factors.end(kim.id(), "Jo");
    assertThat(sessions.whose(session)).isEmpty();
    assertThat(enter(Optional.empty()).person()).isPresent();
    assertThat(factors.recoveryCodesLeft(kim)).isZero();
    assertThatThrownBy(() -> factors.end(kim.id(), "Jo"))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("no second factor");
    assertThat(deeds()).startsWith("Jo: second factor taken away");
    OneTimeKey another = factors.offer(kim);
    assertThat(another.hex()).isNotEqualTo(key.hex());
    factors.turnOn(kim, codeNow(another));
    assertThat(enter(Optional.of(codes.get(0))).person()).as("of before").isEmpty();
    factors.end(kim.id(), "Kim");
    assertThat(deeds()).startsWith("Kim: second factor off");
  }

  /**
   * After 3 that are free the waits are 1, 2, 4 ... 512 s and then 15 minutes. Of one try a minute
   * after the fourth those of the minutes 1 to 6, 8 (after 64 s), 11 (128 s) and 16 (256 s) are
   * looked at; the next would be that of minute 25.
   */
  @Test
  void guessesOfCodesAreSlowedWhateverGoodPasswordsComeBetween() {
    OneTimeKey key = on();
    for (int i = 0; i < 4; i++) {
      assertThat(enter(Optional.of(wrong(key))).delay()).isZero();
    }
    assertThat(enter(Optional.empty()).wanting()).isEqualTo(Wanting.CODE);
    assertThat(enter(Optional.of(wrong(key))).delay()).isEqualTo(Duration.ofSeconds(1));
    List<Integer> lookedAt = new ArrayList<>();
    for (int minute = 1; minute <= 18; minute++) {
      clock.pass(Duration.ofMinutes(1));
      if (enter(Optional.of(wrong(key))).delay().isZero()) {
        lookedAt.add(minute);
      }
    }
    assertThat(lookedAt).containsExactly(1, 2, 3, 4, 5, 6, 8, 11, 16);
    assertThat(deeds()).contains("Filmward: 5 failures in a row");
  }

  @Test
  void neitherCodesAreKeptNorIsTheKeyTold() throws Exception {
    OneTimeKey key = factors.offer(kim);
    List<String> codes = factors.turnOn(kim, codeNow(key)).recoveryCodes();
    StringBuilder kept = new StringBuilder();
    try (var connection = database.plainSql(folder);
        var statement = connection.createStatement();
        var rows = statement.executeQuery("SELECT hash FROM recovery_code")) {
      while (rows.next()) {
        kept.append(rows.getString(1)).append(' ');
      }
    }
    assertThat(kept).contains(Secret.recoveryHash(codes.get(3))).doesNotContain(codes.get(3));
    assertThat(deeds().toString()).doesNotContain(key.hex(), key.letters(), codes.get(3));
  }

  @Test
  void aSessionKnowsTheSignInBeforeItAndAChangeOfTheAccountIsNone() {
    SessionBook sessions = new SessionBook(store, clock, Expiry.A_SHIFT);
    Secret first = sessions.begin(kim, "10.0.0.7");
    assertThat(sessions.earlier(first)).isEmpty();
    clock.pass(Duration.ofHours(3));
    Secret second = sessions.begin(kim, "10.0.0.8");
    SignedIn atNoon = new SignedIn(NOON, "10.0.0.7");
    assertThat(sessions.earlier(second)).contains(atNoon);
    Secret renewed = sessions.renew(kim, "10.0.0.9", sessions.earlier(second));
    assertThat(sessions.earlier(renewed)).contains(atNoon);
    assertThat(sessions.earlier(sessions.begin(kim, "10.0.0.7")))
        .contains(new SignedIn(NOON.plus(Duration.ofHours(3)), "10.0.0.8"));
  }

  @Test
  void aProofHoldsTenMinutesAndCanBeGivenAgain() {
    SessionBook sessions = new SessionBook(store, clock, Expiry.A_SHIFT);
    Secret session = sessions.begin(kim, "10.0.0.7");
    Secret other = sessions.begin(kim, "10.0.0.7");
    clock.pass(Duration.ofSeconds(599));
    assertThat(sessions.isProven(session)).isTrue();
    clock.pass(Duration.ofSeconds(1));
    assertThat(sessions.isProven(session)).isFalse();
    sessions.prove(session);
    assertThat(sessions.isProven(session)).isTrue();
    assertThat(sessions.isProven(other)).isFalse();
  }

  private OneTimeKey on() {
    OneTimeKey key = factors.offer(kim);
    factors.turnOn(kim, codeNow(key));
    return key;
  }

  private String codeNow(OneTimeKey key) {
    return key.code(OneTimeKey.stepAt(clock.instant()));
  }

  /** Six digits that are no code now or near. */
  private String wrong(OneTimeKey key) {
    return java.util.stream.IntStream.range(100_000, 100_010)
        .mapToObj(String::valueOf)
        .filter(code -> key.stepOf(code, clock.instant()).isEmpty())
        .findFirst()
        .orElseThrow();
  }

  private Outcome enter(Optional<String> code) {
    return signIn.check(new Attempt("Kim", TestPeople.PASSWORD, code, "10.0.0.7"));
  }

  private List<String> deeds() {
    return store.read(tables -> tables.audit().newest(100)).stream()
        .map(link -> link.entry().by() + ": " + link.entry().detail())
        .toList();
  }
}
