package dev.filmward.pipeline;

import dev.filmward.drift.TwoSpans;
import java.util.Optional;

/**
 * Two spans of a characteristic side by side: two times, or two lines that make the same film.
 *
 * @param difference empty where one of them has too few samples to be compared
 */
public record SpanComparison(
    SeriesView.Summary first, SeriesView.Summary second, Optional<TwoSpans> difference) {}
