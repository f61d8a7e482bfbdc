package dev.filmward.store;

import java.time.Instant;
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

  public GaugeTable gauges() {
    return new GaugeTable(handle);
  }

  public CalibrationTable calibrations() {
    return new CalibrationTable(handle);
  }

  public CheckTable checkStandards() {
    return new CheckTable(handle);
  }

  public ScalingTable scalings() {
    return new ScalingTable(handle);
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

  public CareTable care() {
    return new CareTable(handle);
  }

  public CauseTable causes() {
    return new CauseTable(handle);
  }

  public CheckPlanTable checks() {
    return new CheckPlanTable(handle);
  }

  public SignatureTable signatures() {
    return new SignatureTable(handle);
  }

  public LineLogTable lineLog() {
    return new LineLogTable(handle);
  }

  public OutcomeTable outcomes() {
    return new OutcomeTable(handle);
  }

  public RollTable rolls() {
    return new RollTable(handle);
  }

  public AlarmMomentTable alarmMoments() {
    return new AlarmMomentTable(handle);
  }

  public ShiftTable shifts() {
    return new ShiftTable(handle);
  }

  public ShiftNoteTable shiftNotes() {
    return new ShiftNoteTable(handle);
  }

  public ShiftFactTable shiftFacts(Instant from, Instant to) {
    return new ShiftFactTable(handle, from, to);
  }

  public HandoverTable handovers() {
    return new HandoverTable(handle);
  }

  public AlarmTally alarmTally() {
    return new AlarmTally(handle);
  }

  public AuditTable audit() {
    return new AuditTable(handle);
  }

  public TellingTable telling() {
    return new TellingTable(handle);
  }

  public OutboxTable outbox() {
    return new OutboxTable(handle);
  }

  public RecoveryCodeTable recoveryCodes() {
    return new RecoveryCodeTable(handle);
  }

  public PersonTable people() {
    return new PersonTable(handle);
  }

  public SessionTable sessions() {
    return new SessionTable(handle);
  }

  public TokenTable tokens() {
    return new TokenTable(handle);
  }

  public ReportTable reports() {
    return new ReportTable(handle);
  }

  public StudyTable studies() {
    return new StudyTable(handle);
  }

  public ThinningTable thinning() {
    return new ThinningTable(handle);
  }

  public ScreeningTable screening() {
    return new ScreeningTable(handle);
  }

  public ScreeningVersionTable screeningVersions() {
    return new ScreeningVersionTable(handle);
  }

  public Soundness soundness() {
    return new Soundness(handle);
  }
}
