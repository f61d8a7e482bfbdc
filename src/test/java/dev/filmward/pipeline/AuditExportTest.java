package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.filmward.pipeline.AuditExport.Format;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.AuditTable.Period;
import dev.filmward.store.Store;
import dev.filmward.store.TestDatabase;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * An auditor proves the chain from the exported file alone, here by code that shares nothing with
 * the store's own.
 */
@ParameterizedClass
@EnumSource(TestDatabase.class)
class AuditExportTest {
  private static final Instant NOON = Instant.parse("2026-11-20T12:00:00.000001Z");
  private static final int DAY_S = 86_400;

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private Store store;

  /** A row as the auditor has it. */
  private record Row(long id, long micros, List<String> texts, String before, String hash) {}

  @BeforeEach
  void fourPeopleDoSomething() {
    store = database.open(folder);
    add(0, "Kim", "acknowledge", "alarm 1", "seen, mine");
    add(1, "=cmd()", "structures", "film, \"two\".yaml", "structures:\r\n  - code: DUO\n");
    add(2, "'quoted", "limits", "+1", "@sum: \u00b5m \ud83d\udcc8");
    add(3, "Jo", "alarm", "-2", "");
  }

  @AfterEach
  void close() {
    store.close();
  }

  private void add(int day, String by, String action, String subject, String detail) {
    Instant at = NOON.plusSeconds((long) day * DAY_S);
    store.change(tables -> tables.audit().add(new AuditEntry(at, by, action, subject, detail)));
  }

  @Test
  void eitherFormProvesTheChain() throws Exception {
    for (Format format : Format.values()) {
      List<Row> rows = rows(export(Period.always(), format), format);
      assertThat(rows).hasSize(4);
      assertThat(fault(rows)).as(format.name()).isEmpty();
      assertThat(rows.get(0).before).isEqualTo("0".repeat(64));
      assertThat(rows.get(2).texts)
          .containsExactly("'quoted", "limits", "+1", "@sum: \u00b5m \ud83d\udcc8");
    }
  }

  @Test
  void aChangedARemovedAndAMovedRowAreFound() throws Exception {
    for (Format format : Format.values()) {
      String whole = export(Period.always(), format);
      List<Row> changed = rows(whole.replace("seen, mine", "seen, yours"), format);
      assertThat(fault(changed)).contains("entry 1");
      List<Row> removed = new ArrayList<>(rows(whole, format));
      removed.remove(1);
      assertThat(fault(removed)).contains("entry 3");
      List<Row> moved = new ArrayList<>(rows(whole, format));
      Collections.swap(moved, 1, 2);
      assertThat(fault(moved)).contains("entry 3");
      List<Row> cutOff = rows(whole, format).subList(0, 3);
      assertThat(fault(cutOff)).isEmpty();
      assertThat(cutOff.get(2).hash)
          .as("only a head that is kept elsewhere shows it")
          .isNotEqualTo(store.<String>read(tables -> tables.audit().check().head()));
    }
  }

  @Test
  void aPartOfTheTimeFollowsOnTheHashBeforeIt() throws Exception {
    ZoneId berlin = ZoneId.of("Europe/Berlin");
    Period twoDays =
        new Period(
            AuditExport.moment("2026-11-21", berlin),
            AuditExport.moment("2026-11-23T00:00:00+01:00", berlin));
    List<Row> all = rows(export(Period.always(), Format.JSON), Format.JSON);
    assertThat(rows(export(twoDays, Format.JSON), Format.JSON)).isEqualTo(all.subList(1, 3));
  }

  @Test
  void noCellOfTheCsvIsAFormula() throws Exception {
    String csv = export(Period.always(), Format.CSV);
    assertThat(csv).contains("\"'=cmd()\"", "\"'+1\"", "\"'-2\"", "\"''quoted\"", "\"'@sum: ");
    assertThat(cells(csv).stream().flatMap(List::stream))
        .noneMatch(cell -> !cell.isEmpty() && "=+-@\t\r".indexOf(cell.charAt(0)) >= 0);
  }

  private String export(Period period, Format format) {
    StringWriter out = new StringWriter();
    store.read(
        tables -> {
          try {
            return AuditExport.write(tables.audit(), period, format, out);
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
    return out.toString();
  }

  /** The first entry that does not follow from the one before. */
  private static Optional<String> fault(List<Row> rows) throws Exception {
    String before = rows.get(0).before;
    for (Row row : rows) {
      if (!row.before.equals(before) || !row.hash.equals(hash(row))) {
        return Optional.of("entry " + row.id);
      }
      before = row.hash;
    }
    return Optional.empty();
  }

  private static String hash(Row row) throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    DataOutputStream out = new DataOutputStream(bytes);
    out.write(HexFormat.of().parseHex(row.before));
    out.writeLong(row.id);
    out.writeLong(row.micros);
    for (String text : row.texts) {
      byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
      out.writeInt(utf8.length);
      out.write(utf8);
    }
    return HexFormat.of()
        .formatHex(MessageDigest.getInstance("SHA-256").digest(bytes.toByteArray()));
  }

  private static List<Row> rows(String text, Format format) throws IOException {
    return format == Format.JSON ? fromJson(text) : fromCsv(text);
  }

  private static List<Row> fromJson(String text) throws IOException {
    List<Row> rows = new ArrayList<>();
    for (JsonNode entry : new ObjectMapper().readTree(text).get("entries")) {
      rows.add(
          new Row(
              entry.get("id").asLong(),
              entry.get("atMicros").asLong(),
              List.of(
                  entry.get("by").asText(),
                  entry.get("action").asText(),
                  entry.get("subject").asText(),
                  entry.get("detail").asText()),
              entry.get("before").asText(),
              entry.get("hash").asText()));
    }
    return rows;
  }

  private static List<Row> fromCsv(String text) {
    List<Row> rows = new ArrayList<>();
    List<List<String>> cells = cells(text);
    for (List<String> row : cells.subList(1, cells.size())) {
      rows.add(
          new Row(
              Long.parseLong(row.get(0)),
              Long.parseLong(row.get(2)),
              row.subList(3, 7).stream().map(cell -> cell.replaceFirst("^'", "")).toList(),
              row.get(7),
              row.get(8)));
    }
    return rows;
  }

  /** Cells after RFC 4180. */
  private static List<List<String>> cells(String csv) {
    List<List<String>> rows = new ArrayList<>();
    List<String> row = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean isQuoted = false;
    for (int i = 0; i < csv.length(); i++) {
      char c = csv.charAt(i);
      if (isQuoted && c == '"' && i + 1 < csv.length() && csv.charAt(i + 1) == '"') {
        cell.append(c);
        i++;
      } else if (c == '"') {
        isQuoted = !isQuoted;
      } else if (!isQuoted && (c == ',' || c == '\n')) {
        row.add(cell.toString());
        cell.setLength(0);
        if (c == '\n') {
          rows.add(List.copyOf(row));
          row.clear();
        }
      } else if (isQuoted || c != '\r') {
        cell.append(c);
      }
    }
    return rows;
  }
}
