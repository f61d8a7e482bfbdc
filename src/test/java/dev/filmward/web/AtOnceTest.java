package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.people.Role;
import dev.filmward.store.TestDatabase;
import dev.filmward.web.Api.Answer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Many shift leads do the same at once, each signed in by a session of their own. */
@ParameterizedClass(name = "{0}")
@EnumSource(TestDatabase.class)
class AtOnceTest {
  private static final int PEOPLE = 20;

  @Parameter private TestDatabase database;
  @TempDir private Path folder;
  private ServedPlant served;
  private Api api;
  private List<Api> people;
  private String alarm;

  @BeforeEach
  void anAlarm() throws Exception {
    served = ServedPlant.in(database, folder).withFrozenLimits();
    api = served.api();
    people =
        IntStream.range(0, PEOPLE)
            .mapToObj(person -> served.as("P" + person, Role.SHIFT_LEAD))
            .toList();
    api.upload("thin.csv", ServedPlant.FILM.thinnerSkin(25, 26, 1));
    alarm = "/api/v1/alarms/" + api.get("/api/v1/alarms").json().get("alarms").get(0).get("id");
  }

  @AfterEach
  void stop() {
    served.close();
  }

  @Test
  void oneTakesItAndTheOthersHearWhoDid() throws Exception {
    List<Answer> answers =
        together(person -> people.get(person).post(alarm + "/acknowledge", "{}"));
    List<Answer> won = answers.stream().filter(answer -> answer.status() == 200).toList();
    assertThat(won).hasSize(1);
    String winner = won.get(0).json().get("acknowledged").get("by").asText();
    assertThat(answers)
        .filteredOn(answer -> answer.status() == 409)
        .hasSize(PEOPLE - 1)
        .allMatch(
            answer ->
                answer
                    .json()
                    .get("error")
                    .get("what")
                    .asText()
                    .startsWith(winner + " has taken this alarm on already"));
    assertThat(now().get("acknowledged").get("by").asText()).isEqualTo(winner);
    assertThat(now().get("history").findValuesAsText("what"))
        .filteredOn("seen, mine"::equals)
        .hasSize(1);
  }

  @Test
  void noCommentIsLost() throws Exception {
    List<Answer> answers =
        together(
            person ->
                people
                    .get(person)
                    .post(alarm + "/comments", "{\"words\": \"saw it " + person + "\"}"));
    assertThat(answers).allMatch(answer -> answer.status() == 200);
    assertThat(now().get("comments").findValuesAsText("words"))
        .containsExactlyInAnyOrderElementsOf(
            IntStream.range(0, PEOPLE).mapToObj(person -> "saw it " + person).toList());
  }

  @Test
  void oneHandsItOnAndTheOthersHearToWhom() throws Exception {
    List<Answer> answers =
        together(
            person ->
                people
                    .get(person)
                    .post(alarm + "/owner", "{\"to\": \"T" + person + "\", \"from\": null}"));
    List<Answer> won = answers.stream().filter(answer -> answer.status() == 200).toList();
    assertThat(won).hasSize(1);
    JsonNode owner = won.get(0).json().get("owner");
    assertThat(answers)
        .filteredOn(answer -> answer.status() == 409)
        .hasSize(PEOPLE - 1)
        .allMatch(
            answer ->
                answer
                    .text()
                    .contains(
                        "with "
                            + owner.get("name").asText()
                            + " now, handed on by "
                            + owner.get("by").asText()));
    assertThat(now().get("owner")).isEqualTo(owner);
  }

  @Test
  void oneDecidesAboutARoll() throws Exception {
    List<Answer> answers =
        together(
            person ->
                people
                    .get(person)
                    .post(
                        "/api/v1/rolls/hold",
                        """
                    {"reason": "thin", "rolls":
                      [{"line": "Blown 1", "structure": "DUO-50", "roll": "R1", "version": 0}]}
                    """));
    assertThat(answers).filteredOn(answer -> answer.status() == 200).hasSize(1);
    JsonNode held = api.get("/api/v1/rolls?state=held").json().get("rolls");
    assertThat(held).hasSize(1);
    assertThat(held.get(0).get("decisions")).hasSize(1);
    String by = held.get(0).get("decisions").get(0).get("by").asText();
    assertThat(answers)
        .filteredOn(answer -> answer.status() == 409)
        .hasSize(PEOPLE - 1)
        .allMatch(answer -> answer.text().contains("was held by " + by));
  }

  private JsonNode now() {
    return api.get(alarm).json();
  }

  private static List<Answer> together(IntFunction<Answer> act) throws Exception {
    CyclicBarrier start = new CyclicBarrier(PEOPLE);
    ExecutorService threads = Executors.newFixedThreadPool(PEOPLE);
    try {
      List<Callable<Answer>> acts =
          IntStream.range(0, PEOPLE)
              .<Callable<Answer>>mapToObj(
                  person ->
                      () -> {
                        start.await();
                        return act.apply(person);
                      })
              .toList();
      List<Answer> answers = new ArrayList<>();
      for (Future<Answer> answer : threads.invokeAll(acts)) {
        answers.add(answer.get());
      }
      return answers;
    } finally {
      threads.shutdownNow();
    }
  }
}
