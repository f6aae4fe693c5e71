package steadypull.adapter.polling;

import java.util.List;
import java.util.Objects;

/** What to do next. A closed set. */
public sealed interface PollRequest {

  /**
   * Ask for current data.
   *
   * @param parameters one to six numbers
   */
  record CurrentData(List<Integer> parameters) implements PollRequest {
    public CurrentData {
      parameters = List.copyOf(parameters);
    }
  }

  /** Ask a control unit for one identifier. */
  record Identified(PollTarget.Identifier target) implements PollRequest {
    public Identified {
      Objects.requireNonNull(target);
    }
  }

  /**
   * Nothing is due.
   *
   * @param untilNanoTime when the next request is; on the clock whose time was handed in
   */
  record Wait(long untilNanoTime) implements PollRequest {}
}
