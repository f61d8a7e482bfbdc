package dev.filmward.store;

import dev.filmward.subgroup.Subgroup;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;

/**
 * Keeps the blocks of a production in step with its samples. A block is a run of samples in the
 * order of time, roll and sample; no two overlap. Samples that come in order fill the last block
 * and begin new ones; one that comes late goes into the block where it belongs, which is cut where
 * it grows too long. For the transaction that changes the samples.
 */
final class BlockTable {
  /** With so many samples the figures of a block fill one page of SQLite. */
  private static final int MOST_SAMPLES = 112;

  /** How many samples a block may be taken to have where nothing is known of it. */
  static final int USUAL_SAMPLES = MOST_SAMPLES / 2;

  static final String PRODUCTION =
      "(SELECT id FROM production WHERE line = :line AND structure = :structure)";

  /** Narrows blocks {@code b} of a production to those that may have samples of a span. */
  static final String WITHIN =
      " AND b.first_at <= :to AND b.last_at >= :from AND b.first_at >= coalesce("
          + "(SELECT max(e.first_at) FROM block e"
          + " WHERE e.production_id = b.production_id AND e.first_at < :from), :from)";

  private final Handle handle;
  private final Database database;

  BlockTable(Handle handle, Database database) {
    this.handle = handle;
    this.database = database;
  }

  private record Header(long id, BlockEntry first) {}

  /** What happens to one block. */
  private static final class Edit {
    private final Set<Long> leave = new HashSet<>();
    private final List<BlockEntry> enter = new ArrayList<>();
  }

  /**
   * Changes blocks.
   *
   * @param leave entries as they were, of samples that changed
   * @param enter entries of samples that are new or changed
   */
  void change(long productionId, List<BlockEntry> leave, List<BlockEntry> enter) {
    long nextId = database.nextId(handle, "block");
    List<Header> headers = headers(productionId, leave, enter);
    NavigableMap<BlockEntry, Header> byFirst = new TreeMap<>();
    headers.forEach(header -> byFirst.put(header.first, header));
    Map<Header, Edit> edits = new HashMap<>();
    Edit fresh = new Edit();
    for (BlockEntry entry : leave) {
      edit(byFirst, entry, edits, fresh).leave.add(entry.id().sampleId());
    }
    for (BlockEntry entry : enter) {
      edit(byFirst, entry, edits, fresh).enter.add(entry);
    }
    List<Piece> pieces = new ArrayList<>();
    edits.forEach((header, edit) -> pieces.addAll(pieces(header.id, edit)));
    if (!fresh.enter.isEmpty()) {
      pieces.addAll(cut(Optional.empty(), List.of(), sorted(fresh.enter)));
    }
    write(productionId, pieces, nextId);
  }

  private static Edit edit(
      NavigableMap<BlockEntry, Header> byFirst,
      BlockEntry entry,
      Map<Header, Edit> edits,
      Edit fresh) {
    if (byFirst.isEmpty()) {
      return fresh;
    }
    var floor = byFirst.floorEntry(entry);
    Header header = floor == null ? byFirst.firstEntry().getValue() : floor.getValue();
    return edits.computeIfAbsent(header, any -> new Edit());
  }

  /** The blocks in which the entries are or belong; the first of all for those before it. */
  private List<Header> headers(long productionId, List<BlockEntry> leave, List<BlockEntry> enter) {
    long from = Long.MAX_VALUE;
    long to = Long.MIN_VALUE;
    for (List<BlockEntry> entries : List.of(leave, enter)) {
      for (BlockEntry entry : entries) {
        from = Math.min(from, entry.takenAt());
        to = Math.max(to, entry.takenAt());
      }
    }
    List<Header> headers =
        query(
            productionId,
            " AND b.first_at <= :to AND b.first_at >= coalesce((SELECT max(e.first_at) FROM block e"
                + " WHERE e.production_id = b.production_id AND e.first_at < :from), :from)",
            Map.of("from", from, "to", to));
    return headers.isEmpty()
        ? query(productionId, " ORDER BY first_at, first_roll, first_sample LIMIT 1", Map.of())
        : headers;
  }

  private List<Header> query(long productionId, String rest, Map<String, Long> arguments) {
    return handle
        .createQuery("SELECT * FROM block b WHERE b.production_id = :production" + rest)
        .bind("production", productionId)
        .bindMap(arguments)
        .map(
            (row, context) ->
                new Header(
                    row.getLong("id"),
                    new BlockEntry(
                        new BlockEntry.Id(
                            0, 0, row.getString("first_roll"), row.getString("first_sample")),
                        row.getLong("first_at"),
                        List.of())))
        .list();
  }

  /** Samples that are to be one block; without an id where the block is new. */
  private record Piece(Optional<Long> id, List<BlockEntry> entries) {}

  private List<Piece> pieces(long blockId, Edit edit) {
    List<BlockEntry> kept = read(blockId);
    kept.removeIf(entry -> edit.leave.contains(entry.id().sampleId()));
    forget(blockId);
    return cut(Optional.of(blockId), kept, sorted(edit.enter));
  }

  /** Fills blocks where all that enters follows on what is there, else cuts evenly. */
  private static List<Piece> cut(Optional<Long> id, List<BlockEntry> kept, List<BlockEntry> enter) {
    boolean follows =
        kept.isEmpty() || enter.isEmpty() || kept.get(kept.size() - 1).compareTo(enter.get(0)) <= 0;
    List<BlockEntry> all = new ArrayList<>(kept);
    all.addAll(enter);
    if (!follows) {
      all.sort(null);
    }
    int blocks = (all.size() + MOST_SAMPLES - 1) / MOST_SAMPLES;
    int each = follows || blocks == 0 ? MOST_SAMPLES : (all.size() + blocks - 1) / blocks;
    List<Piece> pieces = new ArrayList<>();
    for (int from = 0; from < all.size(); from += each) {
      List<BlockEntry> entries = all.subList(from, Math.min(all.size(), from + each));
      pieces.add(new Piece(from == 0 ? id : Optional.empty(), entries));
    }
    return pieces;
  }

  private static List<BlockEntry> sorted(List<BlockEntry> entries) {
    entries.sort(null);
    return entries;
  }

  private List<BlockEntry> read(long blockId) {
    byte[] keysKept =
        handle
            .createQuery("SELECT keys FROM block WHERE id = :id")
            .bind("id", blockId)
            .mapTo(byte[].class)
            .one();
    List<BlockFigures> byPosition =
        handle
            .createQuery("SELECT figures FROM block_figures WHERE block_id = :id ORDER BY position")
            .bind("id", blockId)
            .map((row, context) -> new BlockFigures(row.getBytes("figures")))
            .list();
    BlockKeys keys = new BlockKeys(keysKept);
    List<BlockEntry> entries = new ArrayList<>();
    for (int place = 0; place < keys.count(); place++) {
      List<Optional<Subgroup>> subgroups = new ArrayList<>();
      for (BlockFigures figures : byPosition) {
        if (figures.isPresent(place)) {
          subgroups.add(figures.subgroup(place));
        }
      }
      entries.add(new BlockEntry(keys.id(place), keys.takenAt(place), subgroups));
    }
    return entries;
  }

  private void forget(long blockId) {
    handle
        .createUpdate("DELETE FROM block_figures WHERE block_id = :id")
        .bind("id", blockId)
        .execute();
    handle.createUpdate("DELETE FROM block WHERE id = :id").bind("id", blockId).execute();
  }

  private void write(long productionId, List<Piece> pieces, long firstFreeId) {
    long nextId = firstFreeId;
    List<Long> ids = new ArrayList<>();
    try (RowInsert rows =
        database.insert(
            handle,
            "block",
            "id",
            "production_id",
            "first_at",
            "first_roll",
            "first_sample",
            "last_at",
            "keys")) {
      for (Piece piece : pieces) {
        BlockEntry first = piece.entries.get(0);
        BlockEntry last = piece.entries.get(piece.entries.size() - 1);
        long id = piece.id.isPresent() ? piece.id.get() : nextId++;
        ids.add(id);
        rows.number(id)
            .number(productionId)
            .number(first.takenAt())
            .text(first.id().roll())
            .text(first.id().sample())
            .number(last.takenAt())
            .bytes(BlockKeys.of(piece.entries))
            .endRow();
      }
    }
    try (RowInsert rows =
        database.insert(handle, "block_figures", "block_id", "position", "figures")) {
      for (int i = 0; i < pieces.size(); i++) {
        List<BlockEntry> entries = pieces.get(i).entries;
        int positions = entries.stream().mapToInt(entry -> entry.figures().size()).max().orElse(0);
        for (int position = 0; position < positions; position++) {
          rows.number(ids.get(i))
              .number(position)
              .bytes(BlockFigures.of(entries, position))
              .endRow();
        }
      }
    }
  }
}
