/**
 * Takes a choice of tests, gives their price: how long it is to a false alarm, and to a true one.
 */
package dev.filmward.rule.price;
