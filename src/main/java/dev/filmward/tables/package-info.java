/** Takes values, gives tables that a person looks at: previews and summaries. */
package dev.filmward.tables;
