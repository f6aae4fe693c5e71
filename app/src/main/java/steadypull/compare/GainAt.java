package steadypull.compare;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.thermal.Belief;

/**
 * Both sides at one time after the onset, brought to common load, start and outside air. Degrees
 * above outside, but absolute for engine coolant and oils. Immutable.
 *
 * @param seconds since the onset, above 0
 * @param before degC or K above outside; empty if it cannot be told
 * @param after likewise
 * @param gain how much cooler after, K, below 0 if hotter; empty if it cannot be told
 * @param isMeasured false where the model computed it
 */
public record GainAt(
    int seconds,
    OptionalDouble before,
    OptionalDouble after,
    Optional<Belief> gain,
    boolean isMeasured) {}
