/**
 * What leaves and enters the library as files: trip tables (CSV), those of other programs through a
 * mapping, and vehicle files (JSON). {@link steadypull.exchange.TripTable} is the door for tables;
 * samples stream through it, none is held. Every refusal names file, line, column, what was found
 * and what was expected; a file is taken whole or not at all. Any thread, one for each table.
 */
@NullMarked
package steadypull.exchange;

import org.jspecify.annotations.NullMarked;
