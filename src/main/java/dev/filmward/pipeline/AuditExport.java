package dev.filmward.pipeline;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.AuditTable;
import dev.filmward.store.AuditTable.Chained;
import dev.filmward.store.AuditTable.Period;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Writes the audit chain out so that an auditor can prove it without Filmward: every entry with the
 * hash before it, its own, and its time in whole microseconds, which is what was hashed. A cell of
 * the CSV that a spreadsheet could take for a formula begins with an apostrophe. For one thread.
 */
public final class AuditExport {
  private static final String HOW =
      "hash = SHA-256 of: the 32 bytes of before; id and atMicros as 8 bytes each, highest first;"
          + " then by, action, subject and detail in UTF-8, each after its length in bytes as 4"
          + " bytes, highest first. before is the hash of the entry with the id before; of entry 1"
          + " it is 64 zeros.";
  private static final String FORMULA_STARTS = "=+-@\t\r'";
  private static final List<String> COLUMNS =
      List.of("id", "at", "at_micros", "by", "action", "subject", "detail", "before", "hash");

  private final ObjectMapper mapper = new ObjectMapper();
  private final Writer out;
  private long written;

  private AuditExport(Writer out) {
    this.out = out;
  }

  /** In which form. */
  public enum Format {
    JSON,
    CSV
  }

  /** Writes the entries of a time, and gives how many they were. */
  public static long write(AuditTable table, Period period, Format format, Writer out)
      throws IOException {
    AuditExport export = new AuditExport(out);
    try {
      if (format == Format.CSV) {
        export.csv(table, period);
      } else {
        export.json(table, period);
      }
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    out.flush();
    return export.written;
  }

  /** A time as people give it: with its offset, or a day of the plant, which means its start. */
  public static Optional<Instant> moment(String text, ZoneId zone) {
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          text.indexOf('T') < 0
              ? LocalDate.parse(text).atStartOfDay(zone).toInstant()
              : OffsetDateTime.parse(text).toInstant());
    } catch (DateTimeException e) {
      throw new IllegalArgumentException(
          "\"" + text + "\" is no time; write a day, 2026-11-18, or 2026-11-18T06:00:00+01:00", e);
    }
  }

  private void json(AuditTable table, Period period) throws IOException {
    out.write("{\"howToCheck\":" + mapper.writeValueAsString(HOW) + ",\n\"entries\":[");
    table.each(period, this::jsonEntry);
    out.write("\n]}\n");
  }

  private void jsonEntry(Chained chained) {
    AuditEntry entry = chained.link().entry();
    ObjectNode node =
        JsonNodeFactory.instance
            .objectNode()
            .put("id", chained.link().id())
            .put("at", entry.at().toString())
            .put("atMicros", micros(entry.at()))
            .put("by", entry.by())
            .put("action", entry.action())
            .put("subject", entry.subject())
            .put("detail", entry.detail())
            .put("before", chained.before())
            .put("hash", chained.link().hash());
    write((written == 0 ? "\n" : ",\n") + node);
  }

  private void csv(AuditTable table, Period period) throws IOException {
    out.write(String.join(",", COLUMNS) + "\r\n");
    table.each(period, this::csvEntry);
  }

  private void csvEntry(Chained chained) {
    AuditEntry entry = chained.link().entry();
    String texts =
        List.of(entry.by(), entry.action(), entry.subject(), entry.detail()).stream()
            .map(AuditExport::cell)
            .collect(Collectors.joining(","));
    write(
        String.join(
                ",",
                String.valueOf(chained.link().id()),
                entry.at().toString(),
                String.valueOf(micros(entry.at())),
                texts,
                chained.before(),
                chained.link().hash())
            + "\r\n");
  }

  /** Quoted; whoever reads it back takes one apostrophe off the front where there is one. */
  private static String cell(String text) {
    boolean isGuarded = !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0;
    return '"' + (isGuarded ? "'" : "") + text.replace("\"", "\"\"") + '"';
  }

  private static long micros(Instant at) {
    return ChronoUnit.MICROS.between(Instant.EPOCH, at);
  }

  private void write(String text) {
    try {
      out.write(text);
      written++;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
