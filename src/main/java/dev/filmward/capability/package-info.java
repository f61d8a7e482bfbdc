/** Takes a mean, standard deviations and specification limits, gives capability indices. */
package dev.filmward.capability;
