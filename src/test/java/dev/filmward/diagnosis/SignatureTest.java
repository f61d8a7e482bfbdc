package dev.filmward.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.filmward.diagnosis.Condition.Comparison;
import dev.filmward.diagnosis.Condition.Role;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class SignatureTest {
  private static final Condition NEEDED =
      new Condition(Statistic.LEVEL_Z, Comparison.AT_LEAST, 6, 1, Role.NEEDED);
  private static final Suspect FEEDER = new Suspect("feeder-hopper", "feeder");

  static List<Signature> builtIn() {
    return Signatures.builtIn().all();
  }

  @Test
  void atLeastTwelveAreOfTheProcessAndEightOfTheMeasurement() {
    assertThat(builtIn())
        .filteredOn(one -> one.kind() == Signature.Kind.PROCESS)
        .hasSizeGreaterThanOrEqualTo(12);
    assertThat(builtIn())
        .filteredOn(one -> one.kind() == Signature.Kind.MEASUREMENT)
        .hasSizeGreaterThanOrEqualTo(8);
  }

  @ParameterizedTest
  @MethodSource("builtIn")
  void causesOfABuiltInSignatureAreOnTheBuiltInListOrAnother(Signature signature) {
    assertThat(signature.causes())
        .allSatisfy(
            suspect ->
                assertThat(
                        suspect.code().equals(Causes.OTHER)
                            || Causes.BUILT_IN.find(suspect.code()).isPresent())
                    .as(suspect.code())
                    .isTrue());
  }

  @ParameterizedTest
  @MethodSource("builtIn")
  void aSignatureIsWhollyToldByWordsAndNumbers(Signature signature) {
    List<Condition> read =
        signature.conditions().stream()
            .map(
                one ->
                    Condition.of(
                        one.statistic().word(),
                        one.comparison().word(),
                        one.threshold(),
                        one.weight(),
                        one.role().word()))
            .toList();
    assertThat(
            new Signature(
                signature.code(),
                signature.name(),
                Signature.Kind.fromWord(signature.kind().word()),
                read,
                signature.causes(),
                signature.checks(),
                signature.tellsApart()))
        .isEqualTo(signature);
  }

  @Test
  void aStatisticThatIsNoneIsRefusedWithThoseThereAre() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Condition.of("level-zz", "at-least", 1, 1, "needed"))
        .withMessageContaining("there is no statistic \"level-zz\"")
        .withMessageContaining("level-z, samples-since");
  }

  @Test
  void aComparisonOrRoleThatIsNoneIsRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Condition.of("level-z", "above", 1, 1, "needed"))
        .withMessage("\"above\" is none of at-least, at-most, size-at-least, size-at-most");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Condition.of("level-z", "at-least", 1, 1, "must"))
        .withMessage("\"must\" is none of needed, supports");
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void aThresholdIsANumber(double threshold) {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> new Condition(Statistic.LEVEL_Z, Comparison.AT_LEAST, threshold, 1, Role.NEEDED))
        .withMessageContaining("level-z");
  }

  @ParameterizedTest
  @CsvSource({"NaN,NEEDED", "-1,NEEDED", "101,NEEDED", "0,SUPPORTS"})
  void aWeightIsFromZeroAndAboveItForWhatOnlySupports(double weight, Role role) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Condition(Statistic.LEVEL_Z, Comparison.AT_LEAST, 1, weight, role));
  }

  @ParameterizedTest
  @CsvSource({
    "AT_LEAST, 4, 4, 1",
    "AT_LEAST, 4, 5, 1",
    "AT_LEAST, 4, 1, 0.25",
    "AT_LEAST, 4, -1, 0",
    "AT_MOST, 4, 4, 1",
    "AT_MOST, 4, 16, 0.25",
    "AT_MOST, 0, 16, 0",
    "SIZE_AT_LEAST, 4, -5, 1",
    "SIZE_AT_LEAST, 4, -1, 0.25",
    "SIZE_AT_MOST, 4, -16, 0.25"
  })
  void aConditionIsMetOrTheLessTheFurtherItIsOff(
      Comparison comparison, double threshold, double value, double degree) {
    Condition condition =
        new Condition(Statistic.MOVED_PERCENT, comparison, threshold, 1, Role.SUPPORTS);
    assertThat(condition.degree(value)).isEqualTo(degree);
  }

  @ParameterizedTest
  @EnumSource
  void wordsOfStatisticsAreReadBack(Statistic statistic) {
    assertThat(Statistic.find(statistic.word())).contains(statistic);
    assertThat(statistic.word()).matches("[a-z0-9]+(-[a-z0-9]+)*");
    assertThat(statistic.meaning()).isNotBlank();
  }

  @Test
  void aSignatureBeginsWithWhatItIsAbout() {
    Condition supports = new Condition(Statistic.LEVEL_Z, Comparison.AT_LEAST, 6, 1, Role.SUPPORTS);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> signature("one", List.of(supports)))
        .withMessageContaining("must be needed");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> signature("one", List.of()))
        .withMessageContaining("at least one condition");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "Two Words", "-a", "a--b"})
  void aCodeIsOfSmallLettersDigitsAndHyphens(String code) {
    assertThatIllegalArgumentException().isThrownBy(() -> signature(code, List.of(NEEDED)));
  }

  @Test
  void twoSignaturesCannotHaveTheSameCode() {
    Signature one = signature("one", List.of(NEEDED));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Signatures(List.of(one, one)))
        .withMessage("the code \"one\" is taken");
  }

  private static Signature signature(String code, List<Condition> conditions) {
    return new Signature(
        code, "One", Signature.Kind.PROCESS, conditions, List.of(FEEDER), List.of("Look"), "Look");
  }
}
