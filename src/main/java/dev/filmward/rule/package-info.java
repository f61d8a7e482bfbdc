/** Takes chart points, gives signals: which statistical tests are fulfilled at a point. */
package dev.filmward.rule;
