/** Takes who a person is, gives what that person may do. */
package dev.filmward.people;
