/** Statistical process control for the layers of coextruded film. */
package dev.filmward;
