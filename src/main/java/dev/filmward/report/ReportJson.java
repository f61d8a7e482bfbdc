package dev.filmward.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.IOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/**
 * A report as JSON and back, losing nothing: numbers in full double precision, times ISO 8601 in
 * UTC, what is missing as null. The same report gives the same bytes.
 */
public final class ReportJson {
  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .addModule(new Jdk8Module())
          .addModule(new JavaTimeModule())
          .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
          .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
          .disable(MapperFeature.AUTO_DETECT_IS_GETTERS)
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

  /** Tells apart what two readings of a week say; when and by which version does not count. */
  public static String seen(WeeklyReport report) {
    return digest(write(report.withoutMaking()));
  }

  static String text(Object value) {
    try {
      return MAPPER.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("could not be written as JSON", e);
    }
  }

  static ReportSettings settings(String json) {
    return read(json, new TypeReference<ReportSettings>() {});
  }

  static List<ReportChange> changes(String json) {
    return read(json, new TypeReference<List<ReportChange>>() {});
  }

  private static <T> T read(String json, TypeReference<T> type) {
    try {
      return MAPPER.readValue(json, type);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException("not what is expected here: " + e.getOriginalMessage(), e);
    }
  }

  /** For whoever shows reports. */
  public static JsonNode tree(Object value) {
    return MAPPER.valueToTree(value);
  }

  /**
   * Settings as a person sent them.
   *
   * @throws IllegalArgumentException with what is wrong
   */
  public static ReportSettings settings(JsonNode json) {
    try {
      return MAPPER.treeToValue(json, ReportSettings.class);
    } catch (JsonProcessingException e) {
      Throwable cause = e.getCause() instanceof IllegalArgumentException ? e.getCause() : e;
      throw new IllegalArgumentException(cause.getMessage(), e);
    }
  }
}
