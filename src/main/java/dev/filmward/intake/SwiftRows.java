package dev.filmward.intake;

/**
 * Takes, straight from the blocks, rows that start as the one before them did and hold nothing but
 * plain numbers after that: the same readings as the way through {@link Row} gives, without
 * splitting the row. It leaves off at the first row that is not so. One owner, one thread.
 */
interface SwiftRows {
  /** For files whose columns do not stand in the usual order. */
  SwiftRows NONE =
      new SwiftRows() {
        @Override
        public void learn(Row row) {}

        @Override
        public void takeAlike() {}
      };

  /** Looks at the row that was taken last, while the reader has not left it. */
  void learn(Row row);

  /** Takes rows from where the blocks stand, and leaves the blocks at the first one not taken. */
  void takeAlike();
}
