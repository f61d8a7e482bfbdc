package dev.filmward.capability;

import java.time.LocalDate;

/** What a resin cost on a day; prices move, so the day goes wherever the money goes. */
public record ResinPrice(double perKg, String currency, LocalDate asOf) {
  public ResinPrice {
    Positive.check("a price", perKg);
    if (currency.isBlank()) {
      throw new IllegalArgumentException("a price needs a currency");
    }
  }
}
