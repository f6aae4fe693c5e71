/**
 * TOML text in, tables with the place of every value out. Rule files and mappings are read through
 * {@link steadypull.toml.TomlText}; any thread.
 */
@NullMarked
package steadypull.toml;

import org.jspecify.annotations.NullMarked;
