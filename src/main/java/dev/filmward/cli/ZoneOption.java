package dev.filmward.cli;

import java.time.DateTimeException;
import java.time.ZoneId;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** The plant's time zone, for commands that read or show times. */
final class ZoneOption {
  @Option(
      names = "--zone",
      paramLabel = "ZONE",
      converter = Reader.class,
      description =
          "The plant's time zone, for times without an offset and for what is shown;"
              + " this machine's unless given. For example Europe/Berlin.")
  ZoneId zone = ZoneId.systemDefault();

  /** Reads the name of a zone. */
  static final class Reader implements ITypeConverter<ZoneId> {
    @Override
    public ZoneId convert(String name) {
      try {
        return ZoneId.of(name);
      } catch (DateTimeException e) {
        throw new TypeConversionException(
            "\"" + name + "\" is not a time zone; Europe/Berlin would be one");
      }
    }
  }
}
