/**
 * Reads the rows of an SQLite file without SQLite, for the day on which SQLite refuses it: every
 * page that looks like one with rows is taken at its word, cell by cell, whatever the pages around
 * it have come to. In goes a database file with its write-ahead log, out come rows without a name
 * of a table; whether a row can be believed is for the caller to judge. Nothing is ever written.
 *
 * <p>The form is that of <a href="https://www.sqlite.org/fileformat2.html">Database File
 * Format</a>, cited here by section. {@link steadypull.store.page.DatabasePages} is the door; one
 * thread at a time.
 */
@NullMarked
package steadypull.store.page;

import org.jspecify.annotations.NullMarked;
