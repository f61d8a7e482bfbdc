/** Takes subgroups, gives limits and chart points in units of their own standard deviation. */
package dev.filmward.chart;
