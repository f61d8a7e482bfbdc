/**
 * Takes what a plant keeps of an ISO week, gives the weekly capability report: a value with codes,
 * numbers and facts, which the forms of {@code report.paper} say in words, and which is frozen when
 * a person signs it.
 */
@NullMarked
package dev.filmward.report;

import org.jspecify.annotations.NullMarked;
