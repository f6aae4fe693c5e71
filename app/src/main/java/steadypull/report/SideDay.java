package steadypull.report;

import java.util.Optional;

/**
 * What one side would show on the day to which both were brought, as text. Immutable.
 *
 * @param settles where it settles, such as {@code 97°}
 * @param room to the limit, such as {@code 7° under}; empty if no limit is known
 * @param isOver whether that is over the limit
 * @param time to the limit, such as {@code 2:27}, or that it never reaches it; empty if unknown
 */
public record SideDay(
    String settles, Optional<String> room, boolean isOver, Optional<String> time) {}
