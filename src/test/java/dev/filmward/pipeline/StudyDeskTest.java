package dev.filmward.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.filmward.film.SpecLimits;
import dev.filmward.gauge.study.GaugeStudy;
import dev.filmward.gauge.study.LayerOutcome;
import dev.filmward.gauge.study.StudyPlan;
import dev.filmward.gauge.study.StudyPlan.PlannedLayer;
import dev.filmward.gauge.study.StudyStep;
import dev.filmward.intake.FileRefused;
import dev.filmward.pipeline.StudyDesk.Given;
import dev.filmward.pipeline.StudyDesk.Sender;
import dev.filmward.pipeline.StudyDesk.Taken;
import dev.filmward.store.AuditEntry;
import dev.filmward.store.StoredStudy.End;
import dev.filmward.store.StoredStudy.Ending;
import dev.filmward.store.TestDatabase;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.NoSuchElementException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Two layers, two marked spots, two operators, two trials; 12:00 by a clock that stands still. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class StudyDeskTest {
  private static final Instant NOON = Instant.parse("2026-11-20T12:00:00Z");
  private static final Sender KIM = new Sender("Kim", "");
  private static final StudyPlan PLAN =
      new StudyPlan(
          "Gauge 3",
          "DUO-50",
          "new probe",
          List.of(
              new PlannedLayer("Skin", SpecLimits.of(5, 14, 35)),
              new PlannedLayer("Seal", SpecLimits.NONE)),
          SpecLimits.of(40, 50, 60),
          List.of("1", "2"),
          List.of("Ann", "Bo"),
          2,
          7);

  /** GaugeStudyTest works the skin out by hand; the seal is 100 um less. */
  private static final String FILE =
      """
      part,operator,trial,layer,thickness_um
      1,Ann,1,Skin,10
      1,Ann,2,Skin,12
      1,Bo,1,Skin,11
      1,Bo,2,Skin,15
      2,Ann,1,Skin,20
      2,Ann,2,Skin,22
      2,Bo,1,Skin,27
      2,Bo,2,Skin,27
      """;

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private TestPlant plant;
  private StudyDesk desk;

  @BeforeEach
  void open() {
    plant = new TestPlant(database, folder, NOON);
    desk = new StudyDesk(plant.plant());
  }

  @AfterEach
  void close() {
    plant.close();
  }

  @Test
  void aPlanIsKeptToTheLetterWithWhoAndWhen() {
    long id = desk.plan(PLAN, "Kim").id();
    plant.restart();
    desk = new StudyDesk(plant.plant());
    assertThat(desk.look(id).study().plan())
        .usingRecursiveComparison()
        .ignoringFieldsMatchingRegexes(".*target")
        .isEqualTo(PLAN);
    assertThat(desk.look(id).study().plannedBy()).isEqualTo("Kim");
    assertThat(desk.look(id).study().plannedAt()).isEqualTo(NOON);
    assertThat(newestAudit().detail()).contains("DUO-50").contains("seed 7").contains("new probe");
    assertThatThrownBy(() -> desk.look(id + 1)).isInstanceOf(NoSuchElementException.class);
  }

  @Test
  void theOrderHoldsEveryStepOnceTrialByTrialAndIsThatOfItsSeed() {
    List<StudyStep> order = StudyStep.inOrder(PLAN);
    assertThat(new HashSet<>(order)).hasSize(8).hasSize(PLAN.steps());
    assertThat(order).extracting(StudyStep::trial).containsExactly(1, 1, 1, 1, 2, 2, 2, 2);
    assertThat(StudyStep.inOrder(PLAN)).isEqualTo(order);
  }

  @Test
  void readingsComeOneByOneAndTheResultFollowsFromThem() throws Exception {
    long id = desk.plan(PLAN, "Kim").id();
    assertThat(enter(id, "1", "Ann", 1, "Skin", 10)).isEqualTo(new Taken(1, 0, 0));
    assertThat(enter(id, "1", "Ann", 1, "1", 10)).isEqualTo(new Taken(0, 1, 0));
    assertThat(file(id, FILE, KIM)).isEqualTo(new Taken(7, 1, 0));
    assertThat(desk.look(id).missing()).isEqualTo(8);
    List<LayerOutcome> outcomes = StudyDesk.outcomes(desk.look(id));
    assertThat(outcomes).hasSize(1);
    GaugeStudy skin = ((LayerOutcome.Studied) outcomes.get(0)).study();
    assertThat(skin.variance().gauge()).isEqualTo(11.5);
    // 6 sqrt(11.5)/(35 - 5), the limits of the plan
    assertThat(skin.percentTolerance().orElseThrow())
        .isCloseTo(100 * 6 * Math.sqrt(11.5) / 30, within(1e-9));
  }

  @Test
  void theTotalOfAllLayersIsStudiedToo() throws Exception {
    long id = desk.plan(PLAN, "Kim").id();
    file(id, FILE, KIM);
    file(id, FILE.replace("Skin", "2"), KIM);
    List<LayerOutcome> outcomes = StudyDesk.outcomes(desk.look(id));
    assertThat(outcomes).extracting(LayerOutcome::layer).containsExactly("Skin", "Seal", "total");
    GaugeStudy total = ((LayerOutcome.Studied) outcomes.get(2)).study();
    // both layers move together, so the total has four times the variance; limits 40 to 60
    assertThat(total.variance().gauge()).isCloseTo(4 * 11.5, within(1e-9));
    assertThat(total.tolerance().orElseThrow().widthUm()).isEqualTo(20);
  }

  @Test
  void anotherValueWantsAReasonAndBothAreKept() {
    long id = desk.plan(PLAN, "Kim").id();
    enter(id, "1", "Ann", 1, "Skin", 10);
    assertThatIllegalStateException()
        .isThrownBy(() -> enter(id, "1", "Ann", 1, "Skin", 10.5))
        .withMessageContaining("10.0 by Kim")
        .withMessageContaining("say why");
    Given other = new Given(new StudyStep("1", "Ann", 1), "Skin", 10.5);
    Taken taken = desk.enter(id, List.of(other), new Sender("Lee", "mistyped"));
    assertThat(taken).isEqualTo(new Taken(0, 0, 1));
    assertThat(desk.look(id).corrections()).isEqualTo(1);
    assertThat(desk.look(id).entries().values()).extracting(one -> one.um()).containsExactly(10.5);
    assertThat(newestAudit().by()).isEqualTo("Lee");
    assertThat(newestAudit().detail()).contains("Skin: 10.5").contains("mistyped");
  }

  @Test
  void whatIsNotPlannedIsRefusedAndNothingOfItIsKept() {
    long id = desk.plan(PLAN, "Kim").id();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> enter(id, "3", "Ann", 1, "Skin", 10))
        .withMessageContaining("part \"3\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> enter(id, "1", "Ann", 3, "Skin", 10))
        .withMessageContaining("trial 3");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> enter(id, "1", "Ann", 1, "Skin", 0))
        .withMessageContaining("above zero");
    assertThatThrownBy(() -> file(id, FILE.replace("2,Bo,2,Skin,27", "2,Bo,2,Skin,thick"), KIM))
        .isInstanceOf(FileRefused.class)
        .hasMessageContaining("line 9")
        .hasMessageContaining("thick");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> file(id, FILE.replace("2,Bo,2", "2,Cy,2"), KIM))
        .withMessageContaining("\"Cy\"");
    assertThat(desk.look(id).entries()).isEmpty();
    assertThat(desk.filled(id)).isZero();
  }

  @Test
  void aStudyIsFinishedWithAllItsReadingsAndTakesNoMore() throws Exception {
    long id = desk.plan(PLAN, "Kim").id();
    file(id, FILE, KIM);
    Ending finished = new Ending(End.FINISHED, "Kim", NOON, "fit for charts");
    assertThatIllegalStateException()
        .isThrownBy(() -> desk.end(id, finished))
        .withMessageContaining("8 readings of 16");
    file(id, FILE.replace("Skin", "Seal"), KIM);
    assertThat(desk.end(id, finished).ending()).contains(finished);
    assertThat(newestAudit().detail()).isEqualTo("finished: fit for charts");
    assertThatIllegalStateException()
        .isThrownBy(() -> enter(id, "1", "Ann", 1, "Skin", 11))
        .withMessageContaining("finished by Kim");
    assertThatIllegalStateException().isThrownBy(() -> desk.end(id, finished));
  }

  @Test
  void aStudyThatIsGivenUpKeepsItsReadings() {
    long id = desk.plan(PLAN, "Kim").id();
    enter(id, "1", "Ann", 1, "Skin", 10);
    desk.end(id, new Ending(End.ABANDONED, "Kim", NOON, "probe broke"));
    assertThat(desk.newest(5).get(0).ending().orElseThrow().words()).isEqualTo("probe broke");
    assertThat(desk.look(id).entries()).hasSize(1);
  }

  private Taken enter(long id, String part, String operator, int trial, String layer, double um) {
    return desk.enter(id, List.of(new Given(new StudyStep(part, operator, trial), layer, um)), KIM);
  }

  private Taken file(long id, String text, Sender sender) throws Exception {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return desk.enterFile(id, new ByteArrayInputStream(bytes), "study.csv", sender);
  }

  private AuditEntry newestAudit() {
    return plant.plant().store().read(tables -> tables.audit().newest(1)).get(0).entry();
  }
}
