package dev.filmward.store;

/** How much a database was asked since it was opened; rows that went in together count once. */
public record StoreTally(long statements, long transactions) {
  public StoreTally since(StoreTally earlier) {
    return new StoreTally(statements - earlier.statements, transactions - earlier.transactions);
  }
}
