package dev.filmward.store;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyIn;

/**
 * Inserts rows by PostgreSQL's COPY in its binary format: a header; for each row the number of its
 * values, for each value its length and bytes, big-endian; -1 at the end. Numbers are bigint.
 */
final class CopyInsert implements RowInsert {
  private static final byte[] HEADER =
      ByteBuffer.allocate(19)
          .put("PGCOPY\n".getBytes(StandardCharsets.US_ASCII))
          .put((byte) 0xff)
          .put("\r\n\0".getBytes(StandardCharsets.US_ASCII))
          .array();

  private static final byte[] TRAILER = {-1, -1};
  private static final int BYTES_AT_ONCE = 1 << 16;

  private final CopyIn copy;
  private final short columns;
  private final ByteArrayOutputStream buffer = new ByteArrayOutputStream(2 * BYTES_AT_ONCE);
  private final ByteBuffer scratch = ByteBuffer.allocate(Integer.BYTES + Long.BYTES);
  private int column;

  CopyInsert(Handle handle, String table, List<String> columns) {
    StatementWatch.wrote(handle, table);
    this.columns = (short) columns.size();
    String sql =
        "COPY " + table + " (" + String.join(", ", columns) + ") FROM STDIN WITH (FORMAT binary)";
    try {
      copy = handle.getConnection().unwrap(PGConnection.class).getCopyAPI().copyIn(sql);
    } catch (SQLException e) {
      throw failed(e);
    }
    buffer.writeBytes(HEADER);
  }

  @Override
  public RowInsert number(long value) {
    begin();
    scratch.clear().putInt(Long.BYTES).putLong(value);
    buffer.write(scratch.array(), 0, scratch.position());
    return this;
  }

  @Override
  public RowInsert text(String value) {
    return bytes(Nul.shown(value).getBytes(StandardCharsets.UTF_8));
  }

  @Override
  public RowInsert bytes(byte[] value) {
    begin();
    scratch.clear().putInt(value.length);
    buffer.write(scratch.array(), 0, scratch.position());
    buffer.writeBytes(value);
    return this;
  }

  private void begin() {
    if (column++ == 0) {
      scratch.clear().putShort(columns);
      buffer.write(scratch.array(), 0, scratch.position());
    }
  }

  @Override
  public void endRow() {
    column = 0;
    if (buffer.size() >= BYTES_AT_ONCE) {
      send();
    }
  }

  @Override
  public void close() {
    buffer.writeBytes(TRAILER);
    send();
    try {
      copy.endCopy();
    } catch (SQLException e) {
      throw failed(e);
    }
  }

  private void send() {
    byte[] bytes = buffer.toByteArray();
    buffer.reset();
    try {
      copy.writeToCopy(bytes, 0, bytes.length);
    } catch (SQLException e) {
      throw failed(e);
    }
  }

  private static StoreException failed(SQLException e) {
    return StoreFaults.of("Rows could not be written", e);
  }
}
