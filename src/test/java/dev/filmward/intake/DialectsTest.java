package dev.filmward.intake;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.intake.recognition.Proposal;
import dev.filmward.intake.recognition.Question;
import dev.filmward.intake.recognition.Recognition;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Odd exports are recognised, and read through the mapping that is proposed for them. */
class DialectsTest {
  private static final Recognition.Known KNOWN = new Recognition.Known(Film.BOTH, Seen.PLANT);

  @TestFactory
  List<DynamicTest> everyDialectGivesTheReadingsWrittenOutByHand() throws IOException {
    return Dialects.all().stream()
        .map(dialect -> DynamicTest.dynamicTest(dialect.name(), () -> check(dialect)))
        .toList();
  }

  @TestFactory
  List<DynamicTest> whatWasAnsweredIsWhatIsAskedAndNothingElse() throws IOException {
    return Dialects.all().stream()
        .filter(
            dialect -> dialect.answers().keySet().stream().noneMatch(k -> k.startsWith("column")))
        .map(dialect -> DynamicTest.dynamicTest(dialect.name(), () -> checkQuestions(dialect)))
        .toList();
  }

  private static void checkQuestions(Dialects dialect) throws FileRefused {
    Proposal proposal = Recognition.of(dialect.bytes(), dialect.fileName(), KNOWN, Map.of());
    assertThat(proposal.questions())
        .extracting(Question::key)
        .containsExactlyElementsOf(dialect.answers().keySet());
    assertThat(proposal.mapping().isPresent()).isEqualTo(dialect.answers().isEmpty());
  }

  private static void check(Dialects dialect) throws Exception {
    Proposal proposal =
        Recognition.of(dialect.bytes(), dialect.fileName(), KNOWN, dialect.answers());
    assertThat(proposal.questions()).as(proposal.yaml()).isEmpty();
    byte[] yaml = proposal.yaml().getBytes(StandardCharsets.UTF_8);
    Mapping mapping = MappingFile.read(new ByteArrayInputStream(yaml), "mapping.yaml");

    Seen seen = new Seen();
    List<Rejection> rejections = new ArrayList<>();
    FileCount count =
        new ReadingsParser(Film.BOTH, Seen.PLANT, new Mappings(List.of(mapping)))
            .parse(
                new ByteArrayInputStream(dialect.bytes()),
                dialect.fileName(),
                seen,
                rejections::add);

    assertThat(seen.places.stream().map(DialectsTest::line).toList())
        .as(proposal.yaml() + rejections)
        .containsExactlyElementsOf(dialect.readings());
    assertThat(count.quarantined()).as(rejections.toString()).isEqualTo(dialect.quarantined());
  }

  /** To nine places, since 0.0205 mm are 20.5 um but for the last bit. */
  private static String line(Seen.Place place) {
    String um =
        Double.isNaN(place.um())
            ? "-"
            : String.format(Locale.ROOT, "%.9f", place.um()).replaceFirst("\\.?0+$", "");
    return String.join(
        "|",
        place.takenAt().toString(),
        place.key().line(),
        place.key().structure(),
        place.key().roll(),
        place.key().sample(),
        String.valueOf(place.lane()),
        String.valueOf(place.position()),
        um);
  }
}
