package dev.filmward.bench;

/** Yardstick: a virtual machine that starts and has nothing to do. */
final class BareJvm {
  private BareJvm() {}

  public static void main(String[] args) {}
}
