package dev.filmward.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * A report as JSON and back, losing nothing: numbers in full double precision, times ISO 8601 in UTC, what is missing as null. The same
 * report gives the same bytes.
 */
public final class ReportJson {
  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .addModule(new Jdk8Module())
          .addModule(new JavaTimeModule())
          .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
          .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
          .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .build();

  private ReportJson() {}

  public static byte[] write(WeeklyReport report) {
    try {
      return MAPPER.writeValueAsBytes(report);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a report could not be written as JSON", e);
    }
  }

  /**
   * Reads one that was written.
   *
   * @throws IOException where it is no report
   */
  public static WeeklyReport read(byte[] json) throws IOException {
    return MAPPER.readValue(json, WeeklyReport.class);
  }

  /** SHA-256 in hexadecimal. */
  public static String digest(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  static String text(WeeklyReport report) {
    return new String(write(report), StandardCharsets.UTF_8);
  }
}
