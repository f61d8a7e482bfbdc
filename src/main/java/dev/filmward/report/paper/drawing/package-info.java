/** Takes numbers and ready words, gives vector drawings for paper: the report's charts. Pure. */
@org.jspecify.annotations.NullMarked
package dev.filmward.report.paper.drawing;
