package dev.filmward.pipeline;

import dev.filmward.shift.Shift;
import dev.filmward.shift.ShiftBook;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.HandoverTable;
import dev.filmward.store.ShiftNote;
import dev.filmward.store.ShiftNote.Settled;
import dev.filmward.store.SignedHandover;
import dev.filmward.store.SignedHandover.ShiftKey;
import dev.filmward.store.SignedHandover.Side;
import dev.filmward.store.SignedHandover.Signature;
import dev.filmward.store.Tables;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.NoSuchElementException;
import java.util.Optional;

/** What people of a shift write down and sign. Thread-safe. */
public final class HandoverDesk {
  private static final Duration STILL_HANDING_OVER = Duration.ofHours(1);
  private static final String GIVES =
      "I hand over as it is written here. What the next shift needs to know is in it.";
  private static final String TAKES =
      "I have read this and asked what I needed to ask. I take over as it is written here.";

  private final Plant plant;

  public HandoverDesk(Plant plant) {
    this.plant = plant;
  }

  /** What somebody says by signing. */
  public static String meaning(Side side) {
    return side == Side.OUTGOING ? GIVES : TAKES;
  }

  public static ShiftKey key(String line, Shift shift) {
    return new ShiftKey(line, shift.day().toString(), shift.name());
  }

  public Optional<SignedHandover> signed(ShiftKey key) {
    return plant.store().read(tables -> tables.handovers().newest(key));
  }

  /** The shift that is about to be handed over: the last one, for an hour or until it is signed. */
  public Shift due(ShiftBook book, String line) {
    Instant now = plant.clock().instant();
    Shift current = book.at(now);
    Shift last = book.before(current);
    boolean young = Duration.between(current.from(), now).compareTo(STILL_HANDING_OVER) < 0;
    boolean taken =
        signed(key(line, last)).flatMap(done -> done.signature(Side.INCOMING)).isPresent();
    return young && !taken ? last : current;
  }

  public ShiftNote write(ShiftNote note) {
    return plant
        .store()
        .write(
            tables -> {
              ShiftNote kept = tables.shiftNotes().add(note);
              tables.audit().add(audited(kept, note.writtenAt(), note.by(), note.text()));
              return kept;
            });
  }

  /**
   * Says how a thing to be done came out.
   *
   * @throws NoSuchElementException if there is no such note
   * @throws IllegalStateException if nothing is to be done about it any more
   */
  public ShiftNote settle(long id, Settled settled) {
    return plant
        .store()
        .write(
            tables -> {
              ShiftNote note =
                  tables
                      .shiftNotes()
                      .find(id)
                      .orElseThrow(() -> new NoSuchElementException("no note " + id));
              if (!note.isOpen()) {
                throw new IllegalStateException(
                    note.settled()
                        .map(done -> done.by() + " settled it before: " + done.outcome())
                        .orElse("nothing was to be done about note " + id));
              }
              tables.shiftNotes().settle(id, settled);
              tables
                  .audit()
                  .add(audited(note, settled.at(), settled.by(), "settled: " + settled.outcome()));
              return tables.shiftNotes().find(id).orElseThrow();
            });
  }

  /**
   * Signs what a lead has seen and hands over. It may be signed anew until the other lead has.
   *
   * @param content as it was seen, to the letter
   * @throws IllegalStateException if the other lead has signed, or the shift has not begun
   */
  public SignedHandover handOver(String line, Shift shift, String content, String by) {
    Signature signature = signature(Side.OUTGOING, by);
    if (signature.at().isBefore(shift.from())) {
      throw new IllegalStateException(shift.name() + " of " + shift.day() + " has not begun");
    }
    ShiftKey key = key(line, shift);
    return plant
        .store()
        .write(
            tables -> {
              HandoverTable handovers = tables.handovers();
              handovers.newest(key).ifPresent(HandoverDesk::refuseIfTaken);
              long id = handovers.add(key, content);
              return signed(tables, id, key, signature);
            });
  }

  /**
   * Signs that another lead takes over what was handed over.
   *
   * @param digest of what that lead has seen
   * @throws IllegalStateException if nobody handed over, somebody took over before, or what was
   *     handed over is another one by now
   * @throws IllegalArgumentException if it is the same person
   */
  public SignedHandover takeOver(ShiftKey key, String digest, String by) {
    Signature signature = signature(Side.INCOMING, by);
    return plant
        .store()
        .write(
            tables -> {
              SignedHandover given =
                  tables
                      .handovers()
                      .newest(key)
                      .orElseThrow(() -> new IllegalStateException("nobody has handed over yet"));
              refuseIfTaken(given);
              checkSeen(given, digest);
              checkAnother(given, by);
              return signed(tables, given.id(), key, signature);
            });
  }

  private static SignedHandover signed(Tables tables, long id, ShiftKey key, Signature signature) {
    HandoverTable handovers = tables.handovers();
    SignedHandover given = handovers.newest(key).orElseThrow();
    handovers.sign(id, signature, given.digest());
    tables.audit().add(audited(key, signature, given.digest()));
    return handovers.newest(key).orElseThrow();
  }

  private Signature signature(Side side, String by) {
    return new Signature(side, by, meaning(side), plant.clock().instant());
  }

  private static void refuseIfTaken(SignedHandover handover) {
    handover
        .signature(Side.INCOMING)
        .ifPresent(
            taken -> {
              throw new IllegalStateException(
                  taken.by() + " has taken over; what was signed stays as it is");
            });
  }

  private static void checkSeen(SignedHandover given, String digest) {
    if (!given.digest().equals(digest)) {
      throw new IllegalStateException("it was handed over anew since this page was shown");
    }
  }

  private static void checkAnother(SignedHandover given, String by) {
    given
        .signature(Side.OUTGOING)
        .filter(outgoing -> folded(outgoing.by()).equals(folded(by)))
        .ifPresent(
            outgoing -> {
              throw new IllegalArgumentException(
                  outgoing.by() + " hands over, so another person takes over");
            });
  }

  private static String folded(String name) {
    return name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
  }

  private static AuditEntry audited(ShiftKey key, Signature signature, String digest) {
    String scope = key.line().isEmpty() ? "all lines" : key.line();
    return new AuditEntry(
        signature.at(),
        signature.by(),
        "handover",
        key.shift() + " of " + key.day() + ", " + scope,
        signature.side().word() + ": " + signature.meaning() + " SHA-256 " + digest);
  }

  private static AuditEntry audited(ShiftNote note, Instant at, String by, String detail) {
    String scope = note.line().isEmpty() ? "plant" : note.line();
    return new AuditEntry(at, by, "note", "note " + note.id() + ", " + scope, detail);
  }
}
