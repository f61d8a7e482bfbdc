package dev.filmward.store;

import org.jdbi.v3.core.Handle;

/** The tables, seen through one connection. For the thread that was given it, while it holds it. */
public final class Tables {
  private final Handle handle;
  private final Database database;

  Tables(Handle handle, Database database) {
    this.handle = handle;
    this.database = database;
  }

  public StructureTable structures() {
    return new StructureTable(handle);
  }

  public FileTable files() {
    return new FileTable(handle);
  }

  public HeldRowTable heldRows() {
    return new HeldRowTable(handle);
  }

  public CorrectionTable corrections() {
    return new CorrectionTable(handle);
  }

  public SampleTable samples() {
    return new SampleTable(handle, database);
  }

  public FigureTable figures() {
    return new FigureTable(handle);
  }

  public LimitsTable limits() {
    return new LimitsTable(handle);
  }

  public SignalTable signals() {
    return new SignalTable(handle, database);
  }

  public TestChoiceTable tests() {
    return new TestChoiceTable(handle);
  }

  public HoldTable holds() {
    return new HoldTable(handle);
  }

  public LineModeTable lineModes() {
    return new LineModeTable(handle);
  }

  public AlarmTable alarms() {
    return new AlarmTable(handle);
  }

  public AlarmTally alarmTally() {
    return new AlarmTally(handle);
  }

  public AuditTable audit() {
    return new AuditTable(handle);
  }

  public ThinningTable thinning() {
    return new ThinningTable(handle);
  }

  public Soundness soundness() {
    return new Soundness(handle);
  }
}
