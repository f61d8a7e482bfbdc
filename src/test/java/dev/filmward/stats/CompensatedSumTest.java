package dev.filmward.stats;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class CompensatedSumTest {

  @Test
  void aSmallTermSurvivesALargePartialSum() {
    CompensatedSum sum = new CompensatedSum();
    sum.add(1e100);
    sum.add(1);
    sum.add(-1e100);

    assertThat(sum.value()).isEqualTo(1);
  }

  @Test
  void aThousandTenthsAreAHundred() {
    CompensatedSum sum = new CompensatedSum();
    for (int i = 0; i < 1000; i++) {
      sum.add(0.1);
    }

    assertThat(sum.value()).isEqualTo(100);
  }

  @Test
  void aProductIsNotRoundedBeforeItIsAdded() {
    CompensatedSum sum = new CompensatedSum();
    sum.addProduct(1 + 0x1p-30, 1 - 0x1p-30);
    sum.add(-1);

    assertThat(sum.value()).isEqualTo(-0x1p-60);
  }

  @Test
  void aSumAddedToItselfIsDoubled() {
    CompensatedSum sum = new CompensatedSum();
    sum.add(1e20);
    sum.add(1);
    sum.add(sum);
    sum.add(-2e20);

    assertThat(sum.value()).isEqualTo(2);
  }
}
