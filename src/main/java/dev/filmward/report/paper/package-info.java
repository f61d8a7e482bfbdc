/**
 * Takes a weekly report, gives its paper forms: PDF, a page of HTML that stands alone, a workbook.
 * All are written from one {@link dev.filmward.report.paper.Paper}, so that they say the same.
 */
@NullMarked
package dev.filmward.report.paper;

import org.jspecify.annotations.NullMarked;
