package steadypull.drive;

import java.util.ArrayList;
import java.util.List;

/** What was found on the way up, step by step, as lines for people. One thread. */
final class ConnectionWalk {
  private final List<String> lines = new ArrayList<>();

  /** A step that holds. */
  ConnectionWalk holds(ConnectionStep step, String found) {
    lines.add("  ok  %d  %s%s".formatted(step.number(), step.title(), detail(found)));
    return this;
  }

  /** A step that does not hold, with what to do. */
  ConnectionWalk fails(ConnectionStep step, String found) {
    lines.add("  --  %d  %s: no%s".formatted(step.number(), step.title(), detail(found)));
    lines.add("         " + step.remedy());
    return this;
  }

  /** A step of which nothing can be said; that is no fault. */
  ConnectionWalk isUnknown(ConnectionStep step, String found) {
    lines.add("  ?   %d  %s%s".formatted(step.number(), step.title(), detail(found)));
    return this;
  }

  private static String detail(String found) {
    return found.isEmpty() ? "" : ": " + FaultText.printable(found);
  }

  /** The lines so far. */
  List<String> lines() {
    return List.copyOf(lines);
  }
}
