package dev.filmward.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OneTimeKeyTest {
  /** The key of both documents: the ASCII string "12345678901234567890". */
  private static final OneTimeKey PUBLISHED =
      new OneTimeKey(
          HexFormat.of().formatHex("12345678901234567890".getBytes(StandardCharsets.US_ASCII)));

  /** RFC 4226, appendix D, column HOTP of the counters 0 to 9. */
  @Test
  void countersGiveTheCodesOfRfc4226() {
    assertThat(LongStream.range(0, 10).mapToObj(PUBLISHED::code))
        .containsExactly(
            "755224", "287082", "359152", "969429", "338314", "254676", "287922", "162583",
            "399871", "520489");
  }

  /** RFC 6238, appendix B, SHA-1. It prints 8 digits; 6 digits are the last 6 of them (5.3). */
  @ParameterizedTest
  @CsvSource({
    "59, 0000000000000001, 94287082",
    "1111111109, 00000000023523EC, 07081804",
    "1111111111, 00000000023523ED, 14050471",
    "1234567890, 000000000273EF07, 89005924",
    "2000000000, 0000000003F940AA, 69279037",
    "20000000000, 0000000027BC86AA, 65353130"
  })
  void momentsGiveTheStepsAndCodesOfRfc6238(long second, String step, String code) {
    Instant moment = Instant.ofEpochSecond(second);
    assertThat(OneTimeKey.stepAt(moment)).isEqualTo(HexFormat.fromHexDigitsToLong(step));
    assertThat(PUBLISHED.code(OneTimeKey.stepAt(moment))).isEqualTo(code.substring(2));
  }

  /** 287082 is the code of step 1, the seconds 30 to 59; one step each way is 0 to 89. */
  @Test
  void aCodeIsTakenOneStepBeforeAndOneStepAfter() {
    for (long second : new long[] {0, 29, 30, 59, 60, 89}) {
      assertThat(PUBLISHED.stepOf("287082", Instant.ofEpochSecond(second))).hasValue(1);
    }
    assertThat(PUBLISHED.stepOf("287082", Instant.ofEpochSecond(90))).isEmpty();
    assertThat(PUBLISHED.stepOf("287082", Instant.ofEpochSecond(-1))).isEmpty();
    assertThat(OneTimeKey.longestLife()).isEqualTo(Duration.ofSeconds(90));
  }

  @Test
  void blanksOfACodeDoNotCountAndAllDigitsDo() {
    Instant moment = Instant.ofEpochSecond(59);
    assertThat(PUBLISHED.stepOf(" 287 082 ", moment)).hasValue(1);
    for (String other : new String[] {"", "87082", "2870821", "0287082", "287083"}) {
      assertThat(PUBLISHED.stepOf(other, moment)).as(other).isEmpty();
    }
  }

  /**
   * Base 32 of those 20 letters by Python 3 (base64.b32encode), a general-purpose implementation of
   * RFC 4648.
   */
  @Test
  void aKeyIsShownInBase32InGroupsOfFour() {
    assertThat(PUBLISHED.letters()).isEqualTo("GEZD GNBV GY3T QOJQ GEZD GNBV GY3T QOJQ");
    assertThat(PUBLISHED.address("Kim O'Lee"))
        .isEqualTo(
            "otpauth://totp/Filmward:Kim%20O%27Lee?secret=GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ"
                + "&issuer=Filmward&algorithm=SHA1&digits=6&period=30");
  }

  @Test
  void aNewKeyHas160BitsAndIsInNoLog() {
    OneTimeKey key = OneTimeKey.random();
    assertThat(key.hex()).matches("[0-9a-f]{40}").isNotEqualTo(OneTimeKey.random().hex());
    assertThat(key.toString()).doesNotContain(key.hex());
    assertThat(new OneTimeKey("00".repeat(20)).letters()).startsWith("AAAA AAAA");
    assertThatThrownBy(() -> new OneTimeKey("00".repeat(19))).hasMessageContaining("160");
  }
}
