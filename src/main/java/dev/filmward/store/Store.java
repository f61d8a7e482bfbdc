package dev.filmward.store;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.LongAdder;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;

/**
 * The database of one plant: SQLite in its data folder, or a database of a PostgreSQL server.
 *
 * <p>What {@link #write} has returned from survives a crash of the process and of the machine. One
 * process at a time may hold it. Thread-safe: readers run side by side, writers one after another.
 */
public final class Store implements AutoCloseable {
  private final Database database;
  private final ReentrantLock writing = new ReentrantLock();
  private final Changes changes = new Changes();
  private final LongAdder statements = new LongAdder();
  private final LongAdder transactions = new LongAdder();

  private Store(Database database) {
    this.database = database;
  }

  /**
   * Opens the database of a folder, making both where they do not exist yet.
   *
   * @throws StoreException if another process holds the folder or it cannot be written
   */
  public static Store open(Path dataFolder) {
    return open(dataFolder, Optional.empty());
  }

  /**
   * Opens a database, making its tables where they do not exist yet.
   *
   * @param dataFolder where the database is, unless it has an address of its own
   * @param url the address of a database of a PostgreSQL server, {@code jdbc:postgresql://...}
   * @throws StoreException if another process holds it or it cannot be opened
   */
  public static Store open(Path dataFolder, Optional<String> url) {
    return new Store(
        url.<Database>map(PostgresDatabase::open).orElseGet(() -> SqliteDatabase.open(dataFolder)));
  }

  /**
   * Runs some queries on one connection; each of them sees what was committed before it.
   *
   * @throws StoreException if the database cannot be read
   */
  public <T> T read(Function<Tables, T> work) {
    return readWatched(work, Set.of()).value();
  }

  /**
   * The same, and says afterwards whether reading it again would give the same. Only for work that
   * goes by the database alone.
   */
  public <T> Watched<T> watch(Function<Tables, T> work) {
    return readWatched(work, Set.of());
  }

  /**
   * The same.
   *
   * @param settled tables of which rows are read that do not change once they are there
   */
  public <T> Watched<T> watch(Set<String> settled, Function<Tables, T> work) {
    return readWatched(work, settled);
  }

  private <T> Watched<T> readWatched(Function<Tables, T> work, Set<String> settled) {
    long before = changes.now();
    try {
      return database.read(
          handle -> {
            StatementWatch watch = StatementWatch.of(handle, statements);
            T value = work.apply(new Tables(handle, database));
            Set<String> tables = watch.read();
            tables.removeAll(settled);
            return new Watched<>(value, changes, tables, before);
          });
    } catch (RuntimeException e) {
      throw StoreFaults.translated(e);
    }
  }

  /** How much it was asked so far. */
  public StoreTally tally() {
    return new StoreTally(statements.sum(), transactions.sum());
  }

  /**
   * Runs one transaction; all of it is kept, or nothing where it throws. The work may be run more
   * than once before its transaction is kept, so it changes nothing but the tables.
   *
   * @throws StoreException if the database cannot be written, for example on a full disk
   */
  public <T> T write(Function<Tables, T> work) {
    Set<String> tables = new HashSet<>();
    writing.lock();
    try {
      transactions.increment();
      return database.write(handle -> write(handle, work, tables));
    } catch (RuntimeException e) {
      throw StoreFaults.translated(e);
    } finally {
      changes.wrote(tables);
      writing.unlock();
    }
  }

  private <T> T write(Handle handle, Function<Tables, T> work, Set<String> tables) {
    StatementWatch watch = StatementWatch.of(handle, statements);
    try {
      return work.apply(new Tables(handle, database));
    } finally {
      tables.addAll(watch.written());
    }
  }

  /** As {@link #write}, without an answer. */
  public void change(Consumer<Tables> work) {
    write(
        tables -> {
          work.accept(tables);
          return true;
        });
  }

  @Override
  public void close() {
    database.close();
  }
}
