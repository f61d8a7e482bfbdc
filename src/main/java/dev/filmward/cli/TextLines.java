package dev.filmward.cli;

import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.IThrowableProxy;
import ch.qos.logback.classic.spi.ThrowableProxyUtil;
import ch.qos.logback.core.encoder.EncoderBase;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * One line for people: time, level, who, what. What came from outside cannot begin a line of its
 * own or move the cursor: control characters are written as {@code \\u000a}, and the lines of a
 * fault begin with a bar. Thread-safe.
 */
public final class TextLines extends EncoderBase<ILoggingEvent> {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT).withZone(ZoneId.systemDefault());

  @Override
  public byte[] headerBytes() {
    return new byte[0];
  }

  @Override
  public byte[] footerBytes() {
    return new byte[0];
  }

  @Override
  public byte[] encode(ILoggingEvent event) {
    String logger = event.getLoggerName();
    StringBuilder text = new StringBuilder();
    text.append(TIME.format(event.getInstant()))
        .append(String.format(Locale.ROOT, " %-5s ", event.getLevel()))
        .append(logger.substring(logger.lastIndexOf('.') + 1))
        .append(": ")
        .append(harmless(event.getFormattedMessage()))
        .append('\n');
    IThrowableProxy fault = event.getThrowableProxy();
    if (fault != null) {
      ThrowableProxyUtil.asString(fault)
          .lines()
          .forEach(line -> text.append("  | ").append(harmless(line)).append('\n'));
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static String harmless(String text) {
    if (text.codePoints().noneMatch(TextLines::isHarmful)) {
      return text;
    }
    StringBuilder harmless = new StringBuilder();
    text.codePoints()
        .forEach(
            point -> {
              if (isHarmful(point)) {
                harmless.append(String.format(Locale.ROOT, "\\u%04x", point));
              } else {
                harmless.appendCodePoint(point);
              }
            });
    return harmless.toString();
  }

  /** Tabs are not: they stand in stack traces. */
  private static boolean isHarmful(int point) {
    int type = Character.getType(point);
    return point != '\t'
        && (type == Character.CONTROL
            || type == Character.FORMAT
            || type == Character.LINE_SEPARATOR
            || type == Character.PARAGRAPH_SEPARATOR);
  }
}
