/**
 * What leaves and enters the library as files: trip tables (CSV) and vehicle files (JSON). Every
 * refusal names file, line, column, what was found and what was expected; a file is taken whole or
 * not at all.
 */
@NullMarked
package steadypull.exchange;

import org.jspecify.annotations.NullMarked;
