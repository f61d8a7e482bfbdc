/**
 * Joins the steps: a file in, events out. {@link dev.filmward.pipeline.Plant} keeps what comes in a
 * store and judges it under frozen limits; {@link dev.filmward.pipeline.BatchAnalysis} works on
 * files alone.
 */
package dev.filmward.pipeline;
