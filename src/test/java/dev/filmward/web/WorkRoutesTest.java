package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.store.TestDatabase;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** A request that somebody waits for can be watched and cancelled. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class WorkRoutesTest {
  private static final String WORK = "X-Filmward-Work";
  private static final String NAME = "0123456789-import";
  private static final int SAMPLES = 6_000;
  private static final int READINGS = SAMPLES * SmallFilm.LANES * 2;
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;

  @BeforeEach
  void serve() throws Exception {
    served = ServedPlant.in(database, folder);
    api = served.api();
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void anImportThatIsCancelledStopsAndGoesOnWhenItsFileComesAgain() {
    String csv = SmallFilm.withSampleAt(SAMPLES, ServedPlant.NOW).usual(0, SAMPLES);
    CompletableFuture<Answer> sent =
        CompletableFuture.supplyAsync(
            () ->
                api.send(
                    api.change("/api/v1/files?name=long.csv", "text/csv", csv).header(WORK, NAME)));
    double share = awaitShare();
    JsonNode cancelled = api.post("/api/v1/work/" + NAME + "/cancel", "{}").json();
    assertThat(share).isBetween(0.0, 1.0);
    assertThat(cancelled.get("running").asBoolean()).isTrue();
    Answer answer = sent.join();
    assertThat(answer.status()).isEqualTo(409);
    assertThat(answer.json().at("/error/what").asText()).contains("it was cancelled");
    JsonNode file = api.get("/api/v1/files").json().get("files").get(0);
    assertThat(file.get("refusal").asText()).contains("it was cancelled");
    assertThat(work().get("running").asBoolean()).isFalse();

    JsonNode again = api.upload("long.csv", csv).json();
    assertThat(again.get("readings").asInt()).isEqualTo(READINGS);
    assertThat(again.get("new").asInt()).isPositive();
    assertThat(again.get("new").asInt() + again.get("known").asInt()).isEqualTo(READINGS);
    assertThat(again.get("corrected").asInt()).isZero();
  }

  @Test
  void whatNobodyWaitsForIsNotThereAndANameMustNotBeGuessed() {
    assertThat(work().get("running").asBoolean()).isFalse();
    assertThat(work().get("share").isNull()).isTrue();
    assertThat(
            api.post("/api/v1/work/" + NAME + "/cancel", "{}").json().get("cancelled").asBoolean())
        .isFalse();
    Answer refused = api.send(api.request("/api/v1/board").header(WORK, "short").GET());
    assertThat(refused.status()).isEqualTo(400);
    assertThat(refused.text()).contains("16 to 64 letters");
    assertThat(api.send(api.request("/api/v1/board").header(WORK, NAME).GET()).status())
        .isEqualTo(200);
  }

  /** Waits until some of the file is read. */
  private double awaitShare() {
    Instant end = Instant.now().plus(PATIENCE);
    while (Instant.now().isBefore(end)) {
      JsonNode work = work();
      if (work.get("share").asDouble(0) > 0) {
        return work.get("share").asDouble();
      }
      Thread.onSpinWait();
    }
    throw new AssertionError("nothing was read within " + PATIENCE);
  }

  private JsonNode work() {
    return api.get("/api/v1/work/" + NAME).json();
  }
}
