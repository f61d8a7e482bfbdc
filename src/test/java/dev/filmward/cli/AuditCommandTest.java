package dev.filmward.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.Store;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What an auditor gets from the command line. */
class AuditCommandTest {
  private static final Instant NOON = Instant.parse("2026-11-20T12:00:00Z");

  @TempDir private Path folder;

  @BeforeEach
  void threeEntriesADayApart() {
    try (Store store = Store.open(folder)) {
      for (int day = 0; day < 3; day++) {
        Instant at = NOON.plusSeconds(86_400L * day);
        AuditEntry entry = new AuditEntry(at, "Kim", "limits", "Blown 1", "day " + day);
        store.change(tables -> tables.audit().add(entry));
      }
    }
  }

  private Outcome audit(String... more) {
    String[] all = new String[more.length + 5];
    System.arraycopy(
        new String[] {"audit", "--data", folder.toString(), "--zone", "Europe/Berlin"},
        0,
        all,
        0,
        5);
    System.arraycopy(more, 0, all, 5, more.length);
    return Outcome.of(all);
  }

  @Test
  void everythingComesAsJsonUnlessAskedOtherwise() throws Exception {
    Outcome all = audit();
    assertThat(all.status()).isZero();
    JsonNode entries = Await.json(all.out()).get("entries");
    assertThat(entries)
        .extracting(e -> e.get("detail").asText())
        .containsExactly("day 0", "day 1", "day 2");
    assertThat(all.err()).contains("3 entries", entries.get(2).get("hash").asText());
    Outcome csv = audit("--format", "csv", "--from", "2026-11-21", "--to", "2026-11-22");
    assertThat(csv.out().lines()).hasSize(2).last().asString().contains("\"day 1\"");
  }

  @Test
  void aTimeThatIsNoneIsWrongUse() {
    Outcome wrong = audit("--from", "yesterday");
    assertThat(wrong.status()).isEqualTo(2);
    assertThat(wrong.err()).contains("--from", "yesterday", "2026-11-18");
  }

  @Test
  void aHashThatWasKeptIsFoundAgainUnlessEntriesWereCutOff() throws Exception {
    String head = Await.json(audit().out()).get("entries").get(2).get("hash").asText();
    String[] verify = {"verify", "--data", folder.toString(), "--audit-head", head};
    assertThat(Outcome.of(verify).status()).isZero();
    sql("DROP TRIGGER audit_is_never_deleted", "DELETE FROM audit WHERE id = 3");
    Outcome cutOff = Outcome.of(verify);
    assertThat(cutOff.status()).isEqualTo(1);
    assertThat(cutOff.err()).contains("audit chain", head);
    assertThat(audit().status()).as("without the hash nobody can tell").isZero();
  }

  @Test
  void aChainThatDoesNotHoldIsSaid() throws Exception {
    sql("DROP TRIGGER audit_is_never_changed", "UPDATE audit SET by_whom = 'Jo' WHERE id = 2");
    Outcome broken = audit();
    assertThat(broken.status()).isEqualTo(1);
    assertThat(broken.err()).contains("entry 2");
  }

  private void sql(String... statements) throws Exception {
    String url = "jdbc:sqlite:" + folder.resolve("filmward.db");
    try (Connection connection = DriverManager.getConnection(url);
        Statement statement = connection.createStatement()) {
      for (String sql : statements) {
        statement.executeUpdate(sql);
      }
    }
  }
}
