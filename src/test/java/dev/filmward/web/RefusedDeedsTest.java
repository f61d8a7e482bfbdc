package dev.filmward.web;

import static org.assertj.core.api.Assertions.assertThat;

import dev.filmward.people.Permission;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class RefusedDeedsTest {
  /** Of 1000 refusals those numbered 1, 2, 4, ... 512 are told: ten lines. */
  @Test
  void thousandRefusalsOfOneKindAreTenLines() {
    RefusedDeeds refusals = new RefusedDeeds();
    assertThat(IntStream.range(0, 1000).map(i -> refusals.note("person-3", Permission.DECIDE)))
        .filteredOn(told -> told > 0)
        .containsExactly(1, 2, 4, 8, 16, 32, 64, 128, 256, 512);
  }

  @Test
  void somebodyElseAndAnotherPermissionAreToldApart() {
    RefusedDeeds refusals = new RefusedDeeds();
    assertThat(refusals.note("person-3", Permission.DECIDE)).isEqualTo(1);
    assertThat(refusals.note("person-4", Permission.DECIDE)).isEqualTo(1);
    assertThat(refusals.note("person-3", Permission.AUDIT)).isEqualTo(1);
    assertThat(refusals.note("person-3", Permission.DECIDE)).isEqualTo(2);
  }
}
