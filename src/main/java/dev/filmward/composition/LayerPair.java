package dev.filmward.composition;

import java.util.Optional;

/**
 * How two layers of a film move together. Immutable.
 *
 * @param first and {@code second}: positions from 1
 * @param thickness of sample means; empty where a layer does not vary or samples are few
 * @param share of the total; below zero by closure alone
 * @param logRatio of centred log-ratios
 * @param isTrade whether what one loses the other gains, with both together nearly constant
 */
public record LayerPair(
    int first,
    int second,
    Optional<Correlation> thickness,
    Optional<Correlation> share,
    Optional<Correlation> logRatio,
    boolean isTrade) {}
