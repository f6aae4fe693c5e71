/**
 * SAE J1979 services and ISO 14229 service 22: requests, the parameter table, decoding, support
 * maps and the vehicle identification number. Bytes of one message in, named values with units out.
 */
@NullMarked
package steadypull.adapter.diagnostic;

import org.jspecify.annotations.NullMarked;
