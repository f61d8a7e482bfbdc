/** Takes alarms, gives what may have caused them and what to look at first. */
package dev.filmward.diagnosis;
