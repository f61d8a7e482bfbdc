package dev.filmward.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.filmward.store.AuditTable.Check;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AuditTableTest {
  private static final Instant NOON = Instant.parse("2026-11-20T12:00:00Z");
  private static final AuditEntry FIRST =
      new AuditEntry(NOON, "Kim", "acknowledge", "alarm 1", "seen, mine");
  private static final AuditEntry SECOND =
      new AuditEntry(NOON.plusSeconds(1), "Jo", "limits", "Blown 1, DUO-50", "frozen: quiet");

  @TempDir private Path folder;
  private Store store;

  @BeforeEach
  void open() {
    store = Store.open(folder);
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void anEmptyChainIsWhole() {
    assertThat(check()).isEqualTo(new Check(0, "0".repeat(64), java.util.Optional.empty()));
  }

  /** The hash was computed by sha256sum (GNU coreutils 9.1) of the bytes that the class names. */
  @Test
  void theFirstHashIsThatOfTheBytesThatTheClassNames() {
    add(FIRST);
    assertThat(check().head())
        .isEqualTo("6406bf56b7a8eba2cf22e0494c842eedd3ea193b917ee201ac066b03323e526a");
  }

  @Test
  void entriesComeBackAsTheyWereGivenAfterARestart() {
    add(FIRST, SECOND);
    String head = check().head();
    store.close();
    store = Store.open(folder);
    assertThat(store.<List<AuditTable.Link>>read(tables -> tables.audit().newest(10)))
        .extracting(AuditTable.Link::entry)
        .containsExactly(SECOND, FIRST);
    assertThat(check()).isEqualTo(new Check(2, head, java.util.Optional.empty()));
  }

  @Test
  void theDatabaseItselfRefusesToChangeOrDeleteAnEntry() {
    add(FIRST);
    for (String sql : List.of("UPDATE audit SET by_whom = 'Jo'", "DELETE FROM audit")) {
      assertThatThrownBy(() -> sql(sql)).hasMessageContaining("never");
    }
    assertThat(check().links()).isEqualTo(1);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "UPDATE audit SET by_whom = 'Jo' WHERE id = 1",
        "UPDATE audit SET at = at + 1 WHERE id = 1",
        "UPDATE audit SET detail = 'seen, mine ' WHERE id = 1",
        // the same letters, moved from one field to the next
        "UPDATE audit SET action = 'acknowledgealarm', subject = ' 1' WHERE id = 1",
        "DELETE FROM audit WHERE id = 1",
        "INSERT INTO audit SELECT id + 1, at, by_whom, action, subject, detail, hash FROM audit"
            + " WHERE id = 2",
      })
  void whoeverGetsRoundThatIsFoundOut(String tampering) throws Exception {
    add(FIRST, SECOND);
    sql("DROP TRIGGER audit_is_never_changed");
    sql("DROP TRIGGER audit_is_never_deleted");
    assertThat(check().fault()).isEmpty();
    sql(tampering);
    assertThat(check().fault()).isPresent();
  }

  @Test
  void entriesInAnotherOrderAreFoundOut() throws Exception {
    add(FIRST, SECOND);
    sql("DROP TRIGGER audit_is_never_changed");
    sql("UPDATE audit SET id = id + 100");
    sql("UPDATE audit SET id = CASE id WHEN 101 THEN 2 ELSE 1 END");
    assertThat(check().fault()).hasValueSatisfying(w -> assertThat(w).startsWith("entry 1 is not"));
  }

  @Test
  void whatIsCutOffAtTheEndIsMissedByItsHashThatWasKeptElsewhere() throws Exception {
    add(FIRST);
    String first = check().head();
    add(SECOND);
    String second = check().head();
    assertThat(faultBeside(first)).isEmpty();
    assertThat(faultBeside(second)).isEmpty();
    sql("DROP TRIGGER audit_is_never_deleted");
    sql("DELETE FROM audit WHERE id = 2");
    assertThat(check().fault()).as("the chain alone cannot tell").isEmpty();
    assertThat(faultBeside(first)).isEmpty();
    assertThat(faultBeside(second)).hasValueSatisfying(w -> assertThat(w).contains(second));
  }

  @Test
  void aChainThatIsWrittenAnewIsNotTheOneThatWasKept() throws Exception {
    add(FIRST, SECOND);
    String kept = check().head();
    sql("DROP TRIGGER audit_is_never_deleted");
    sql("DELETE FROM audit");
    add(SECOND, FIRST);
    assertThat(check().fault()).isEmpty();
    assertThat(faultBeside(kept)).isPresent();
  }

  private java.util.Optional<String> faultBeside(String kept) {
    return store.<Check>read(tables -> tables.audit().check(java.util.Optional.of(kept))).fault();
  }

  private void add(AuditEntry... entries) {
    for (AuditEntry entry : entries) {
      store.change(tables -> tables.audit().add(entry));
    }
  }

  private Check check() {
    return store.read(tables -> tables.audit().check());
  }

  private void sql(String sql) throws Exception {
    String url = "jdbc:sqlite:" + folder.resolve("filmward.db");
    try (Connection connection = DriverManager.getConnection(url);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }
}
