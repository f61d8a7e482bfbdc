package dev.filmward.store;

import java.util.HashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.LongAdder;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.SqlLogger;
import org.jdbi.v3.core.statement.SqlStatements;
import org.jdbi.v3.core.statement.StatementContext;

/**
 * Sees the statements that run on one connection while it is held: counts them, and notes which
 * tables they name. For the thread that holds the connection.
 */
final class StatementWatch implements SqlLogger {
  private static final Pattern WORD = Pattern.compile("[a-z_]+");
  private static final Pattern CHANGE =
      Pattern.compile("(?:insert into|update|delete from) ([a-z_]+)");
  private static final int MOST_KNOWN = 2000;

  /** Statements are constants of this package; there are some hundreds. */
  private static final Map<String, Named> KNOWN = new ConcurrentHashMap<>();

  private final LongAdder statements;
  private final Set<String> read = new HashSet<>();
  private final Set<String> written = new HashSet<>();

  /**
   * @param statements counts on
   */
  StatementWatch(LongAdder statements) {
    this.statements = statements;
  }

  /**
   * What a statement names.
   *
   * @param read the tables that it reads, and other words that are no table's name
   * @param written the table that it changes
   */
  private record Named(Set<String> read, Set<String> written) {
    static Named of(String sql) {
      String lower = sql.strip().toLowerCase(Locale.ROOT);
      Set<String> words = new HashSet<>();
      Matcher word = WORD.matcher(lower);
      while (word.find()) {
        words.add(word.group());
      }
      Matcher change = CHANGE.matcher(lower);
      return change.lookingAt()
          ? new Named(Set.of(), Set.of(change.group(1)))
          : new Named(Set.copyOf(words), lower.startsWith("select") ? Set.of() : words);
    }
  }

  /** Begins to watch a connection. */
  static StatementWatch of(Handle handle, LongAdder statements) {
    StatementWatch watch = new StatementWatch(statements);
    handle.getConfig(SqlStatements.class).setSqlLogger(watch);
    return watch;
  }

  /** Notes rows that go into a table by a way of their own. */
  static void wrote(Handle handle, String table) {
    if (handle.getConfig(SqlStatements.class).getSqlLogger() instanceof StatementWatch watch) {
      watch.statements.increment();
      watch.written.add(table);
    }
  }

  @Override
  public void logBeforeExecution(StatementContext context) {
    statements.increment();
    String sql = context.getRawSql();
    if (sql == null) {
      return;
    }
    Named named = KNOWN.get(sql);
    if (named == null) {
      named = Named.of(sql);
      if (KNOWN.size() < MOST_KNOWN) {
        KNOWN.put(sql, named);
      }
    }
    read.addAll(named.read);
    written.addAll(named.written);
  }

  /** Words of queries, the names of all tables that were read among them. */
  Set<String> read() {
    return read;
  }

  /** The names of all tables that were changed. */
  Set<String> written() {
    return written;
  }
}
