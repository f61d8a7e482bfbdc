package dev.filmward.web;

import com.fasterxml.jackson.databind.JsonNode;
import dev.filmward.chart.LimitsState;
import dev.filmward.chart.LimitsVersion.Decision;
import dev.filmward.chart.LimitsVersion.StateChange;
import dev.filmward.pipeline.AutocorrelationRemedy;
import dev.filmward.pipeline.BaselineChoice;
import dev.filmward.store.LimitsTable.Exclusion;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Reads what a request about limits says. */
final class LimitsRequests {
  private static final int USUAL_BASELINE = 25;

  private LimitsRequests() {}

  /**
   * The baseline that a body names: {@code subgroups} of the {@code first} or {@code last} samples,
   * or all {@code between} two times; without {@code excluded} samples.
   *
   * @param usual where it lies unless the body says so
   */
  static BaselineChoice baseline(JsonNode body, BaselineChoice.Where usual) {
    BaselineChoice.Where where = where(body, usual);
    BaselineChoice choice =
        where == BaselineChoice.Where.BETWEEN
            ? BaselineChoice.between(time(body, "from"), time(body, "to"))
            : new BaselineChoice(
                where, subgroups(body), Instant.MIN, Instant.MAX, List.of(), Optional.empty());
    List<Exclusion> excluded = new ArrayList<>();
    for (JsonNode each : body.path("excluded")) {
      excluded.add(
          new Exclusion(each.path("roll").asText(), Requests.field(each, "sample"), cause(each)));
    }
    BaselineChoice without = choice.without(excluded);
    return remedy(body).map(without::with).orElse(without);
  }

  /** What a body says is done about neighbouring samples that are alike. */
  static Optional<AutocorrelationRemedy> remedy(JsonNode body) {
    return body.hasNonNull("autocorrelation")
        ? Optional.of(AutocorrelationRemedy.fromWord(body.path("autocorrelation").asText()))
        : Optional.empty();
  }

  /** The state that a body names, decided by a person. */
  static StateChange change(JsonNode body, LimitsState usual, String by, Instant now) {
    LimitsState state =
        body.hasNonNull("state") ? LimitsState.fromWord(body.path("state").asText()) : usual;
    return new StateChange(state, new Decision(by, Requests.field(body, "reason"), now));
  }

  private static String cause(JsonNode excluded) {
    return excluded.path("cause").asText("");
  }

  private static int subgroups(JsonNode body) {
    JsonNode subgroups = body.path("subgroups");
    if (subgroups.isMissingNode() || subgroups.isNull()) {
      return USUAL_BASELINE;
    }
    if (!subgroups.isInt()) {
      throw new IllegalArgumentException(
          "\"subgroups\" is a whole number of samples, not " + subgroups);
    }
    return subgroups.asInt();
  }

  private static BaselineChoice.Where where(JsonNode body, BaselineChoice.Where usual) {
    String word = body.path("baseline").asText(usual.name());
    try {
      return BaselineChoice.Where.valueOf(word.toUpperCase(Locale.ROOT));
    } catch (IllegalArgumentException e) {
      throw new IllegalArgumentException(
          "\"baseline\" is first, last or between, not \"" + word + "\"", e);
    }
  }

  private static Instant time(JsonNode body, String name) {
    String text = Requests.field(body, name);
    try {
      return OffsetDateTime.parse(text).toInstant();
    } catch (DateTimeException e) {
      throw new IllegalArgumentException(
          "\"" + name + "\" is a time like 2026-11-18T06:00:00+01:00, not \"" + text + "\"", e);
    }
  }
}
