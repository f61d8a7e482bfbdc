package dev.filmward.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ThreadLocalRandom;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.postgresql.ds.PGSimpleDataSource;

/**
 * A database of a PostgreSQL server. Readers have connections of a pool, each read one snapshot;
 * one connection writes. Where the server goes away, work waits for it: a read for a moment, a
 * write for minutes. A write is done again unless it had been committed before the connection was
 * lost, which its ticket tells; so nothing is written twice.
 */
final class PostgresDatabase implements Database {
  private static final String PREFIX = "jdbc:postgresql:";
  private static final int CONNECTIONS = 6;
  private static final String ROWS_AT_ONCE = "2000";
  private static final Duration CONNECT = Duration.ofSeconds(5);
  private static final Duration READ_PATIENCE = Duration.ofSeconds(10);
  private static final Duration WRITE_PATIENCE = Duration.ofMinutes(2);

  private final String shown;
  private final PostgresOwner owner;
  private final HikariDataSource source;
  private final Jdbi jdbi;

  private PostgresDatabase(String shown, PostgresOwner owner, HikariDataSource source) {
    this.shown = shown;
    this.owner = owner;
    this.source = source;
    this.jdbi = Jdbi.create(source);
    jdbi.registerArgument(new Nul());
  }

  static PostgresDatabase open(String url) {
    String shown = withoutSecrets(url);
    if (!url.startsWith(PREFIX)) {
      throw new StoreException(
          shown + " is no address of a database. Write --db " + PREFIX + "//HOST/DATABASE.");
    }
    PostgresOwner owner = new PostgresOwner(url, shown);
    try {
      owner.handle();
      PGSimpleDataSource plain = new PGSimpleDataSource();
      plain.setUrl(url);
      Migrations.run(plain, "postgresql");
      return new PostgresDatabase(shown, owner, connect(url));
    } catch (RuntimeException e) {
      owner.close();
      if (e instanceof StoreException && !Attempts.isLost(e) && e.getCause() == null) {
        throw e;
      }
      throw new StoreException(
          "The database at " + shown + " cannot be opened: " + Attempts.reason(e), e);
    }
  }

  private static String withoutSecrets(String url) {
    int query = url.indexOf('?');
    String address = query < 0 ? url : url.substring(0, query);
    return address.replaceFirst("//[^/@]*@", "//");
  }

  private static HikariDataSource connect(String url) {
    HikariConfig config = new HikariConfig();
    config.setJdbcUrl(url);
    config.addDataSourceProperty("defaultRowFetchSize", ROWS_AT_ONCE);
    config.setAutoCommit(false);
    config.setReadOnly(true);
    config.setTransactionIsolation("TRANSACTION_REPEATABLE_READ");
    config.setConnectionTimeout(CONNECT.toMillis());
    config.setMaximumPoolSize(CONNECTIONS);
    config.setMinimumIdle(1);
    config.setPoolName("filmward-store");
    return new HikariDataSource(config);
  }

  @Override
  public <T> T read(Function<Handle, T> work) {
    Attempts attempts = new Attempts(shown, READ_PATIENCE);
    try (Handle handle = reader(attempts)) {
      attempts.done();
      return work.apply(handle);
    } catch (RuntimeException e) {
      if (e instanceof StoreException || !Attempts.isLost(e)) {
        throw e;
      }
      throw new StoreException(
          "The database at " + shown + " went away while it was read. Try again.", e);
    }
  }

  /** A connection that answers; the pool may hold some that were lost while nobody used them. */
  private Handle reader(Attempts attempts) {
    while (true) {
      try {
        Handle handle = jdbi.open();
        if (isAlive(handle)) {
          return handle;
        }
      } catch (RuntimeException e) {
        attempts.pause(e);
      }
    }
  }

  private static boolean isAlive(Handle handle) {
    try {
      handle.createQuery("SELECT 1").mapTo(Integer.class).one();
      return true;
    } catch (RuntimeException e) {
      handle.close();
      if (Attempts.isLost(e)) {
        return false;
      }
      throw e;
    }
  }

  private record Done<T>(T answer) {}

  @Override
  public <T> T write(Function<Handle, T> work) {
    Attempts attempts = new Attempts(shown, WRITE_PATIENCE);
    long ticket = ThreadLocalRandom.current().nextLong();
    Optional<Done<T>> unanswered = Optional.empty();
    while (true) {
      try {
        Handle handle = owner.handle();
        if (unanswered.isPresent() && isWritten(handle, ticket)) {
          attempts.done();
          return unanswered.get().answer;
        }
        unanswered = Optional.empty();
        T answer = begin(handle, work, ticket);
        unanswered = Optional.of(new Done<>(answer));
        handle.commit();
        attempts.done();
        return answer;
      } catch (RuntimeException e) {
        if (!Attempts.isLost(e)) {
          throw e;
        }
        owner.drop();
        attempts.pause(e);
      }
    }
  }

  /** Does the work of a transaction, but for its commit. */
  private static <T> T begin(Handle handle, Function<Handle, T> work, long ticket) {
    handle.begin();
    try {
      T answer = work.apply(handle);
      handle.execute("UPDATE last_write SET ticket = ?", ticket);
      return answer;
    } catch (RuntimeException e) {
      if (!Attempts.isLost(e)) {
        handle.rollback();
      }
      throw e;
    }
  }

  private static boolean isWritten(Handle handle, long ticket) {
    return handle.createQuery("SELECT ticket FROM last_write").mapTo(Long.class).one() == ticket;
  }

  @Override
  public RowInsert insert(Handle handle, String table, String... columns) {
    return new CopyInsert(handle, table, List.of(columns));
  }

  @Override
  public void close() {
    source.close();
    owner.close();
  }
}
