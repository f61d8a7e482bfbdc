/** Takes what somebody shows to be let in, gives who it is and what that one may do. */
package dev.filmward.access;
