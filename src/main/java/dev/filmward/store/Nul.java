package dev.filmward.store;

import java.sql.Types;
import org.jdbi.v3.core.argument.AbstractArgumentFactory;
import org.jdbi.v3.core.argument.Argument;
import org.jdbi.v3.core.config.ConfigRegistry;

/** Text in PostgreSQL has no place for NUL, so its picture (U+2400) stands in for it there. */
final class Nul extends AbstractArgumentFactory<String> {
  private static final char PICTURE = '\u2400';

  Nul() {
    super(Types.VARCHAR);
  }

  static String shown(String text) {
    return text.replace('\0', PICTURE);
  }

  @Override
  protected Argument build(String value, ConfigRegistry config) {
    return (position, statement, context) -> statement.setString(position, shown(value));
  }
}
