package dev.filmward.store;

import javax.sql.DataSource;
import org.flywaydb.core.Flyway;

/** Brings a database to the layout of this release. */
final class Migrations {
  private Migrations() {}

  static void run(DataSource source, String folder) {
    Flyway.configure(Migrations.class.getClassLoader())
        .dataSource(source)
        .locations("classpath:db/" + folder)
        .load()
        .migrate();
  }
}
