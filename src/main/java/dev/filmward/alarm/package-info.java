/**
 * Takes signals, gives alarms: what a person must deal with. One alarm for one excursion of one
 * group of layers, however many points and tests signal; states after IEC 62682.
 */
package dev.filmward.alarm;
