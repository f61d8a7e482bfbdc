/**
 * Takes what happened to alarms, gives messages for people; {@link dev.filmward.telling.Post} and
 * what it uses are the border to mail servers and web addresses, the rest are values.
 */
package dev.filmward.telling;
