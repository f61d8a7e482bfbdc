/**
 * The pages and the JSON behind them, over HTTP. A border: handlers translate between the wire and
 * the pipeline, they never compute.
 */
package dev.filmward.web;
