/**
 * Takes bytes, gives readings or rejections. Imports the vocabulary of film and a YAML parser;
 * touches no files, clocks or threads: it reads the stream it is given.
 */
package dev.filmward.intake;
