/** Takes readings, gives subgroups: the readings of one characteristic in one sample, summed up. */
package dev.filmward.subgroup;
