package steadypull.advice;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import steadypull.channel.Channel;

/**
 * Which channel of an advisory was first and which joined it later: what runs out first is what a
 * workshop looks at first. One thread.
 */
final class FirstOut {
  private final Set<Channel> channels = new LinkedHashSet<>();

  /** A new advisory, led by this rule. */
  void begins(RuleWatch first) {
    channels.clear();
    first.channel().ifPresent(channels::add);
  }

  /** Rules raised now whose channels have not been among them yet, each channel once. */
  List<RuleWatch> joining(List<RuleWatch> raised) {
    List<RuleWatch> joining = new ArrayList<>();
    for (RuleWatch each : raised) {
      if (each.channel().filter(channels::add).isPresent()) {
        joining.add(each);
      }
    }
    return joining;
  }

  /** The first of several; empty while it is alone. */
  Optional<Channel> ofSeveral() {
    return channels.size() > 1 ? channels.stream().findFirst() : Optional.empty();
  }
}
