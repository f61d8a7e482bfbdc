package dev.filmward.store;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** The kinds of database that tests run on. PostgreSQL is a real server, one for all tests. */
public enum TestDatabase {
  SQLITE {
    @Override
    public Optional<String> url(Path folder) {
      return Optional.empty();
    }

    @Override
    public Connection plainSql(Path folder) throws SQLException {
      return DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("filmward.db"));
    }
  },
  POSTGRESQL {
    @Override
    public Optional<String> url(Path folder) {
      return Optional.of(Server.urlOf(folder));
    }

    @Override
    public Connection plainSql(Path folder) throws SQLException {
      return DriverManager.getConnection(Server.urlOf(folder));
    }
  };

  /** Opens the store that belongs to a folder, the same one each time. */
  public Store open(Path folder) {
    return Store.open(folder, url(folder));
  }

  /** The address of the store that belongs to a folder, where it has one. */
  public abstract Optional<String> url(Path folder);

  /** A connection beside the store's own. */
  public abstract Connection plainSql(Path folder) throws SQLException;

  private static final class Server {
    private static final Map<Path, String> DATABASES = new HashMap<>();
    private static final EmbeddedPostgres SERVER = start();

    private static EmbeddedPostgres start() {
      try {
        EmbeddedPostgres server = EmbeddedPostgres.start();
        Runtime.getRuntime().addShutdownHook(new Thread(() -> stop(server)));
        return server;
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    private static void stop(EmbeddedPostgres server) {
      try {
        server.close();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    private static synchronized String urlOf(Path folder) {
      String name = DATABASES.computeIfAbsent(folder, any -> create("plant" + DATABASES.size()));
      return SERVER.getJdbcUrl("postgres", name);
    }

    private static String create(String name) {
      try (Connection connection = SERVER.getPostgresDatabase().getConnection();
          Statement statement = connection.createStatement()) {
        statement.execute("CREATE DATABASE " + name);
        return name;
      } catch (SQLException e) {
        throw new IllegalStateException(e);
      }
    }
  }
}
