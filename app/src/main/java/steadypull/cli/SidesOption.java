package steadypull.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Stack;
import picocli.CommandLine.IParameterConsumer;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import steadypull.compare.Side;

/** Which trips were driven before a change and which after it, in the order told. */
final class SidesOption {
  private final List<Named> named = new ArrayList<>();

  @Option(
      names = "--before",
      paramLabel = "TRIP",
      arity = "1..*",
      parameterConsumer = Before.class,
      description = {
        "Trips or tables from before the change;",
        "TRIP@120-480 is a part, in seconds."
      })
  private List<String> before = new ArrayList<>();

  @Option(
      names = "--after",
      paramLabel = "TRIP",
      arity = "1..*",
      parameterConsumer = After.class,
      description = "Trips or tables from after it.")
  private List<String> after = new ArrayList<>();

  /**
   * A trip of one side.
   *
   * @param place of its group in the order told, 0 first; before, after and before again are 0, 1
   *     and 2
   */
  record Named(Side side, int place, String what) {}

  /** All that were named, in the order told. */
  List<Named> named() {
    return List.copyOf(named);
  }

  private void add(Side side, String what) {
    int place = 0;
    if (!named.isEmpty()) {
      Named last = named.getLast();
      place = last.side() == side ? last.place() : last.place() + 1;
    }
    named.add(new Named(side, place, what));
    (side == Side.BEFORE ? before : after).add(what);
  }

  /** Takes trips up to the next option; the parser's own way forgets the order of two options. */
  abstract static class Group implements IParameterConsumer {
    private final Side side;

    Group(Side side) {
      this.side = side;
    }

    @Override
    @SuppressWarnings("JdkObsolete") // the parser's own type
    public void consumeParameters(Stack<String> words, ArgSpec option, CommandSpec command) {
      int taken = 0;
      for (; !words.isEmpty() && !words.peek().startsWith("-"); taken++) {
        owner(option).add(side, words.pop());
      }
      if (taken == 0) {
        throw new MissingParameterException(command.commandLine(), option, "no TRIP");
      }
    }

    private static SidesOption owner(ArgSpec option) {
      try {
        return option.scope().get();
      } catch (Exception unreachable) {
        throw new IllegalStateException("The parser does not know whose option it is", unreachable);
      }
    }
  }

  /** Before the change. */
  static final class Before extends Group {
    Before() {
      super(Side.BEFORE);
    }
  }

  /** After it. */
  static final class After extends Group {
    After() {
      super(Side.AFTER);
    }
  }
}
