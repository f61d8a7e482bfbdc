package dev.filmward.cli;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.OutputStreamAppender;
import org.slf4j.LoggerFactory;
import picocli.CommandLine.Option;

/** How messages on standard error look. */
final class LogOption {
  static final String REQUESTS = "dev.filmward.web.RequestWatch";

  @Option(
      names = "--log-format",
      paramLabel = "json|text",
      defaultValue = "${env:FILMWARD_LOG_FORMAT:-text}",
      description =
          "How messages on standard error look: text, or json, an object a line and one for every"
              + " request; text unless given here or in FILMWARD_LOG_FORMAT.")
  private Format format = Format.TEXT;

  enum Format {
    TEXT,
    JSON
  }

  /** From now on; text is what every command begins with. */
  void apply() {
    if (format == Format.JSON
        && LoggerFactory.getILoggerFactory() instanceof LoggerContext context) {
      Logger root = context.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
      if (root.getAppender("stderr") instanceof OutputStreamAppender<ILoggingEvent> appender) {
        JsonLines lines = new JsonLines();
        lines.setContext(context);
        lines.start();
        appender.setEncoder(lines);
      }
      context.getLogger(REQUESTS).setLevel(Level.INFO);
    }
  }
}
