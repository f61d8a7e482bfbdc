package dev.filmward.report.paper.drawing;

/** A rectangle in points; the top is smaller than the bottom. Immutable. */
record Box(double left, double top, double right, double bottom) {
  double width() {
    return right - left;
  }

  double height() {
    return bottom - top;
  }

  boolean meets(Box other) {
    return left < other.right && right > other.left && top < other.bottom && bottom > other.top;
  }
}
